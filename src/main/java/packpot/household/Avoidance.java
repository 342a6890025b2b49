package packpot.household;

import java.util.Locale;
import java.util.regex.Pattern;
import packpot.dog.Dog;
import packpot.food.Food;

/** Foods that a dog must not get, named by a food, a group of foods, or a word such as "beef". */
public final class Avoidance {

    private Avoidance() {}

    /** Whether a dog must not get a food. */
    public static boolean avoids(Dog dog, Food food) {
        return dog.avoids().stream().anyMatch(word -> names(word, food));
    }

    /** Whether a word speaks of a food: its id or label, its group, or a whole word of its names. */
    public static boolean names(String word, Food food) {
        String plain = word.strip().toLowerCase(Locale.ROOT);
        if (plain.equals(food.id())
                || plain.equals(food.label().toLowerCase(Locale.ROOT))
                || plain.equals(food.group().key())) {
            return true;
        }
        Pattern whole = Pattern.compile(
                "(?<![\\p{L}\\p{N}])" + Pattern.quote(plain) + "s?(?![\\p{L}\\p{N}])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
        return whole.matcher(food.label()).find()
                || whole.matcher(food.name()).find()
                || whole.matcher(food.id()).find();
    }
}
