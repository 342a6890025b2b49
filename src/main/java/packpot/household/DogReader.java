package packpot.household;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.dog.Activity;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.dog.Plausible;
import packpot.dog.Reproduction;
import packpot.dog.Transition;
import packpot.dog.WeighIn;
import packpot.food.Food;
import packpot.units.Dimension;

/** Reads "dogs". */
final class DogReader {
    /** So many times the age at which it counts as grown, a dog has long been grown: our own judgement, no source. */
    private static final double LONG_GROWN = 1.5;

    private static final double LEAST_KG = 0.1;
    private static final double MOST_KG = 150;
    /** Less than half of the resting energy. */
    private static final double LEAST_KCAL_PER_KG075 = 30;

    private final Knowledge knowledge;
    private final LocalDate start;
    private final Notes notes;
    private final WeighInReader weighInReader;
    private final CourseReader courseReader;
    private final DogFinisher finisher;

    DogReader(Knowledge knowledge, LocalDate start, Notes notes, DogFinisher finisher) {
        this.knowledge = knowledge;
        this.start = start;
        this.notes = notes;
        this.weighInReader =
                new WeighInReader(start, new Plausible(knowledge.overTime().figures()));
        this.courseReader = new CourseReader(start, knowledge.overTime().figures());
        this.finisher = finisher;
    }

    List<Dog> read(Fields scenario) {
        List<Dog> dogs = new ArrayList<>();
        Set<String> names = new HashSet<>();
        List<Fields> all = scenario.objects("dogs");
        if (all.isEmpty() && (!scenario.has("dogs") || scenario.raw("dogs").isArray())) {
            scenario.fault(
                    "dogs",
                    "no dog is given; expected a list with at least one, such as"
                            + " [{\"name\": \"Moss\", \"weight\": \"21 lb\", \"age\": \"4 years\"}]");
        }
        for (Fields fields : all) {
            Dog dog = dog(fields);
            String name = dog == null ? fields.raw("name").asText("").strip() : dog.name();
            if (!name.isEmpty() && !names.add(name.toLowerCase(Locale.ROOT))) {
                fields.fault("name", "two dogs are called \"" + name + "\"; give each a name of its own");
            }
            if (dog != null) {
                dogs.add(dog);
            }
        }
        return dogs;
    }

    private @Nullable Dog dog(Fields fields) {
        String name = fields.requiredText("name", "the dog's name");
        String called = name == null ? "this dog" : name;
        CourseReader.Stay stay = courseReader.stay(fields);
        Double ageDays = AgeReader.days(fields, start, stay.comesDay());
        Double adult = weight(fields, "expectedAdultWeight");
        Plausible.Kind kind = ageDays == null
                ? null
                : new Plausible.Kind(
                        ageDays,
                        knowledge.energy().grownDays(adult == null ? null : adult / 1000),
                        fields.has("gestation") || fields.has("lactation"));
        List<WeighIn> weighIns = weighInReader.read(fields, kind);
        Double weight = todaysWeight(fields, weighIns, kind);
        Double goal = weight(fields, "goalWeight");
        // A scenario may keep the figure for a while once the puppy is grown.
        if (ageDays != null
                && adult != null
                && ageDays > LONG_GROWN * knowledge.energy().grownDays(adult / 1000)) {
            fields.fault(
                    "expectedAdultWeight",
                    "read " + kg(adult) + " for a dog that has long been grown, and would not be used; leave it out, or"
                            + " give its \"goalWeight\"");
        } else if (weight != null && adult != null && adult < weight) {
            fields.fault(
                    "expectedAdultWeight",
                    "read " + kg(adult) + ", which is below today's " + kg(weight) + "; give the weight that " + called
                            + " will have when grown, or leave it out");
        }
        if (weight != null && goal != null && (goal < weight / 2 || goal > weight * 2)) {
            fields.fault(
                    "goalWeight",
                    "read " + kg(goal) + " for a dog of " + kg(weight)
                            + "; expected between half and double of today's weight");
        }
        Dog.Sex sex =
                fields.choice("sex", List.of(Dog.Sex.values()), s -> s.name().toLowerCase(Locale.ROOT));
        boolean neutered = neutered(fields, called);
        Activity activity = fields.choice("activity", List.of(Activity.values()), Activity::key);
        if (!fields.has("activity")) {
            notes.filled("taken.activity", called);
        }
        Integer score = fields.whole("conditionScore", 1, 9);
        Reproduction reproduction = ReproductionReader.read(fields, sex);
        Double vet = energy(fields, "vetEnergy", "a day", 20_000);
        if (vet != null && weight != null && vet < LEAST_KCAL_PER_KG075 * Dog.metabolicWeight(weight / 1000)) {
            fields.fault(
                    "vetEnergy",
                    String.format(
                            Locale.ROOT,
                            "read %.0f kcal a day, on which a dog of %s starves; expected its energy for a whole day",
                            vet,
                            kg(weight)));
        }
        Double fed = energy(fields, "fedEnergy", "a day", 20_000);
        if (fed != null && !fields.has("weighIns")) {
            fields.fault("fedEnergy", "is given without \"weighIns\", which would tell what it did; give them too");
        }
        boolean growing = kind != null && kind.ageDays() < kind.grownDays();
        String led = reproduction != null ? "in whelp or nursing" : growing ? "growing" : null;
        Double weekly = courseReader.weeklyShare(fields, weight, goal, led);
        Transition transition = TransitionReader.read(fields, knowledge.kitchen());
        Double treats = energy(fields, "treats", "a day", 5_000);
        Double other = energy(fields, "otherFood", "a day", 20_000);
        List<String> avoids = avoids(fields);
        String profile =
                fields.choice("profile", List.copyOf(knowledge.profiles().names()), p -> p);
        fields.end();
        if (name == null || weight == null || ageDays == null) {
            return null;
        }
        Dog dog = new Dog(
                name,
                weight / 1000,
                ageDays,
                adult == null ? null : adult / 1000,
                sex == null ? Dog.Sex.UNKNOWN : sex,
                neutered,
                activity == null ? Activity.MODERATE : activity,
                score,
                goal == null ? null : goal / 1000,
                reproduction,
                vet,
                (treats == null ? 0 : treats) + (other == null ? 0 : other),
                avoids,
                profile,
                new Course(weighIns, fed, weekly, stay.comesDay(), stay.leavesDay(), null, transition, null));
        return finisher.finish(dog, !fields.has("weight"), notes);
    }

    /** In g: the weight of the first day, or the latest weigh-in where none is given. */
    private @Nullable Double todaysWeight(Fields fields, List<WeighIn> weighIns, Plausible.@Nullable Kind kind) {
        Double weight = weight(fields, "weight");
        boolean listed = fields.has("weighIns")
                && !(fields.raw("weighIns").isArray() && fields.raw("weighIns").isEmpty());
        if (!fields.has("weight") && !listed) {
            fields.fault(
                    "weight",
                    "is missing; expected " + Dimension.MASS.words() + " such as " + Dimension.MASS.example()
                            + ", or a list of \"weighIns\"");
        }
        if (weighIns.isEmpty()) {
            return weight;
        }
        if (weight != null && kind != null) {
            weighInReader.agree(fields, weight / 1000, weighIns, kind);
        }
        return fields.has("weight")
                ? weight
                : (Double) (weighIns.get(weighIns.size() - 1).kg() * 1000);
    }

    private boolean neutered(Fields fields, String called) {
        if (!fields.has("neutered")) {
            notes.filled("taken.neutered", called);
        }
        return fields.flag("neutered", true);
    }

    static @Nullable Double weight(Fields fields, String name) {
        Double grams = fields.quantity(name, Dimension.MASS);
        if (grams != null && (grams < LEAST_KG * 1000 || grams > MOST_KG * 1000)) {
            fields.fault(
                    name,
                    "read " + kg(grams) + ", which no dog weighs; expected from " + kg(LEAST_KG * 1000) + " to "
                            + kg(MOST_KG * 1000));
            return null;
        }
        return grams;
    }

    static String kg(double grams) {
        return String.format(Locale.ROOT, "%.1f kg (%.1f lb)", grams / 1000, grams / 453.59237);
    }

    private static @Nullable Double energy(Fields fields, String name, String per, double most) {
        Double kcal = fields.quantity(name, Dimension.ENERGY);
        if (kcal != null && kcal > most) {
            fields.fault(
                    name, String.format(Locale.ROOT, "read %.0f kcal %s; expected at most %.0f kcal", kcal, per, most));
            return null;
        }
        return kcal;
    }

    private List<String> avoids(Fields fields) {
        List<String> words = fields.texts("avoid");
        for (String word : words) {
            if (knowledge.foods().all().stream().noneMatch(food -> Avoidance.names(word, food))) {
                fields.fault(
                        "avoid",
                        "\"" + word + "\" is neither a food nor a group of foods known here"
                                + Nearest.advice(
                                        word,
                                        knowledge.foods().all().stream()
                                                .map(Food::label)
                                                .toList(),
                                        3));
            }
        }
        return words;
    }
}
