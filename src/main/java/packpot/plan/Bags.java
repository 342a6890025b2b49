package packpot.plan;

import java.util.ArrayList;
import java.util.List;
import packpot.words.Sentence;

/** Names numbered bags in words. */
final class Bags {

    private Bags() {}

    /** Such as "bag 4", "bags 4 and 5", "bags 4 to 9 and 12"; numbers are in their order. */
    static Sentence words(List<Integer> numbers) {
        return words("todo.bags", numbers);
    }

    /** The same at the beginning of a sentence. */
    static Sentence first(List<Integer> numbers) {
        return words("todo.bagsFirst", numbers);
    }

    private static Sentence words(String key, List<Integer> numbers) {
        List<Object> runs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= numbers.size(); i++) {
            if (i == numbers.size() || numbers.get(i) != numbers.get(i - 1) + 1) {
                int first = numbers.get(from);
                int last = numbers.get(i - 1);
                if (last == first + 1) {
                    runs.add(first);
                }
                runs.add(last <= first + 1 ? (Object) last : Sentence.of("todo.bagsRun", first, last));
                from = i;
            }
        }
        return Sentence.of(key, numbers.size(), new Sentence.And(runs));
    }
}
