package packpot.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.food.Constituent;
import packpot.food.Dosing;
import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * Amounts are drawn, whatever they are worth as a meal; then what every row says of them is reckoned again from the foods'
 * own figures, dog by dog and nutrient by nutrient.
 */
class RecountTest {
    /** An adult, and a puppy by another profile; together they meet every kind of requirement. */
    private static final String OTHER_DOGS = """
            [{"name": "Ash", "weight": "20 kg", "age": "4 years", "activity": "low", "neutered": true, "profile": "fediaf"},
             {"name": "Elm", "weight": "6 kg", "age": "16 weeks", "expectedAdultWeight": "30 kg", "profile": "nrc-2006"}]""";

    /** A batch of drawn amounts and what follows from them. */
    private static final class Drawn {
        final Build build;
        final double[] values;
        final Map<PantryItem, Double> pot = new HashMap<>();
        final Map<DogNeed, Map<PantryItem, Double>> bowls = new HashMap<>();

        Drawn(Build build, long seed) {
            this.build = build;
            Random random = new Random(seed);
            values = new double[build.model.variables().size()];
            build.potGrams.forEach((food, grams) -> {
                values[grams.index()] = random.nextInt(4) == 0 ? 0 : 1000 * random.nextDouble();
                pot.put(food.item(), values[grams.index()]);
            });
            build.doses.forEach((dog, doses) -> {
                Map<PantryItem, Double> bowl = new HashMap<>();
                doses.forEach((food, count) -> {
                    values[count.index()] = random.nextInt(5);
                    var supplement = food.item().food().supplement();
                    double days = supplement.dosing() == Dosing.DAILY ? dog.days() : 1;
                    bowl.put(
                            food.item(),
                            values[count.index()] * days * supplement.smallestPart() * supplement.gramsPerMeasure());
                });
                bowls.put(dog, bowl);
            });
            set("kcal of the pot", potSum(RecountTest::kcal));
            set("cooked grams", potSum(item -> item.preparation().yieldCookedOverRaw()));
            build.doses.keySet().forEach(dog -> set("kcal of " + dog.dog().name(), of(dog, RecountTest::kcal)));
            for (Nutrient nutrient : build.knowledge.nutrients().all()) {
                set("pot " + nutrient.key(), potSum(item -> amount(item, nutrient.towardMinimum())));
                set(
                        "pot " + nutrient.key() + " against the maximum",
                        potSum(item -> amount(item, nutrient.towardMaximum())));
            }
        }

        private void set(String name, double value) {
            build.model.variables().stream().filter(v -> v.name().equals(name)).forEach(v -> values[v.index()] = value);
        }

        private double potSum(ToDoubleFunction<PantryItem> perGram) {
            return pot.entrySet().stream()
                    .mapToDouble(e -> e.getValue() * perGram.applyAsDouble(e.getKey()))
                    .sum();
        }

        /** What a dog gets: its share of the pot by its need, and its bowl. */
        double of(DogNeed dog, ToDoubleFunction<PantryItem> perGram) {
            double all = build.needs.dogs().stream()
                    .mapToDouble(each -> each.kcalPerDay() * each.days())
                    .sum();
            double share = dog.kcalPerDay() * dog.days() / all;
            return share * potSum(perGram)
                    + bowls.get(dog).entrySet().stream()
                            .mapToDouble(e -> e.getValue() * perGram.applyAsDouble(e.getKey()))
                            .sum();
        }

        double least(DogNeed dog, Nutrient nutrient) {
            return of(dog, item -> amount(item, nutrient.towardMinimum()));
        }

        double most(DogNeed dog, Nutrient nutrient) {
            return of(dog, item -> amount(item, nutrient.towardMaximum()));
        }
    }

    private static double kcal(PantryItem item) {
        var food = item.food().composition();
        double carbohydrate = food.perGram(Constituent.CARBOHYDRATE_G) - food.perGram(Constituent.FIBRE_G);
        return 4 * food.perGram(Constituent.PROTEIN_G)
                + 9 * food.perGram(Constituent.FAT_G)
                + 4 * Math.max(0, carbohydrate);
    }

    private static double amount(PantryItem item, Map<Constituent, Double> weights) {
        return weights.entrySet().stream()
                .mapToDouble(e -> e.getValue()
                        * item.food().composition().perGram(e.getKey())
                        * item.preparation().retention().getOrDefault(e.getKey(), 1.0))
                .sum();
    }

    @ParameterizedTest
    @ValueSource(strings = {Tiny.DOGS, OTHER_DOGS})
    void everyRowOfEveryDogSaysWhatItsWordsSay(String dogs) {
        Build build = Tiny.build(Tiny.household(dogs, Tiny.PANTRY, Tiny.KITCHEN, ""));
        int rows = 0;
        for (long seed = 1; seed <= 3; seed++) {
            Drawn drawn = new Drawn(build, seed);
            for (Row<Wish> row : build.model.rows()) {
                if (row.name().startsWith("pot ")
                        || row.name().startsWith("kcal of ")
                        || row.name().equals("cooked grams")) {
                    same(row, drawn, 0);
                    assertThat(List.of(row.lower(), row.upper())).isEqualTo(List.of(0.0, 0.0));
                }
            }
            for (DogNeed dog : build.needs.dogs()) {
                for (Requirement requirement : dog.requirements()) {
                    rows++;
                    requirement(drawn, dog, requirement);
                }
            }
        }
        assertThat(rows).isGreaterThan(3 * 2 * 40);
    }

    private static void requirement(Drawn drawn, DogNeed dog, Requirement requirement) {
        Nutrients nutrients = drawn.build.knowledge.nutrients();
        Limit limit = requirement.limit();
        double reserve = drawn.build.rules().roundingReserve();
        double margin = drawn.build.rules().margin();
        double thousands = drawn.of(dog, RecountTest::kcal) / 1000;
        double asked = requirement.per1000Kcal();
        boolean most = limit.kind() == Limit.Kind.MAXIMUM;
        String side = most ? " at most " : " at least ";
        Row<Wish> row;
        if (nutrients.isRatio(limit.nutrient())) {
            Nutrients.Ratio ratio = nutrients.ratio(limit.nutrient());
            row = row(drawn.build, dog, ratio.label() + side);
            same(
                    row,
                    drawn,
                    most
                            ? drawn.most(dog, ratio.numerator())
                                    - asked * (1 - reserve) * drawn.least(dog, ratio.denominator())
                            : drawn.least(dog, ratio.numerator())
                                    - asked * (1 + reserve) * (1 + margin) * drawn.most(dog, ratio.denominator()));
            assertThat(row.tag().kind()).isEqualTo(Wish.Kind.RATIO);
            assertThat(row.tag().size()).isCloseTo(dog.kcalPerBatch() / 1000, within(1e-9));
            assertThat(row.name()).endsWith(" : 1");
        } else if (limit.kind() == Limit.Kind.DEPENDENT_MINIMUM) {
            Nutrient nutrient = nutrients.get(limit.nutrient());
            double base = dog.requirements().stream()
                    .filter(each -> each.limit().kind() == Limit.Kind.MINIMUM
                            && each.limit().nutrient().equals(limit.nutrient()))
                    .mapToDouble(Requirement::per1000Kcal)
                    .sum();
            row = row(drawn.build, dog, nutrient.label() + " rising with ");
            same(
                    row,
                    drawn,
                    drawn.least(dog, nutrient)
                            - base * (1 + margin) * (1 + reserve) * thousands
                            - limit.value()
                                    * (1 + reserve)
                                    * (drawn.least(dog, nutrients.get(limit.per())) - limit.threshold() * thousands));
            assertThat(row.tag().size()).isCloseTo(base * dog.kcalPerBatch() / 1000, within(1e-9));
        } else {
            Nutrient nutrient = nutrients.get(limit.nutrient());
            row = row(drawn.build, dog, nutrient.label() + side);
            same(
                    row,
                    drawn,
                    most
                            ? drawn.most(dog, nutrient) - asked * (1 - reserve) * thousands
                            : drawn.least(dog, nutrient) - asked * (1 + margin) * (1 + reserve) * thousands);
            assertThat(row.tag().size())
                    .isCloseTo(
                            asked * dog.kcalPerBatch() / 1000,
                            within(1e-9 * (1 + row.tag().size())));
            assertThat(row.tag().kind()).isEqualTo(most ? Wish.Kind.NUTRIENT_MAXIMUM : Wish.Kind.NUTRIENT_MINIMUM);
            assertThat(row.name()).endsWith(" " + nutrient.unit() + " per 1000 kcal");
        }
        assertThat(row.tag().who()).isEqualTo(dog.dog().name());
        assertThat(List.of(row.lower(), row.upper()))
                .isEqualTo(most ? List.of(Double.NEGATIVE_INFINITY, 0.0) : List.of(0.0, Double.POSITIVE_INFINITY));
    }

    private static Row<Wish> row(Build build, DogNeed dog, String words) {
        List<Row<Wish>> rows = build.model.rows().stream()
                .filter(row -> row.name().startsWith(dog.dog().name() + ": " + words))
                .toList();
        assertThat(rows).as(words).hasSize(1);
        return rows.get(0);
    }

    private static void same(Row<Wish> row, Drawn drawn, double expected) {
        double[] size = {1};
        row.expression().forEach((Variable v, Double a) -> size[0] += Math.abs(a * drawn.values[v.index()]));
        assertThat(row.expression().value(drawn.values)).as(row.name()).isCloseTo(expected, within(1e-9 * size[0]));
    }

    /** A supplement's own limit holds pot and bowl together, for a puppy the one for growth. */
    @Test
    void supplementsKeepToLimitsOfTheirOwn() {
        Build build = Tiny.build(Tiny.household(OTHER_DOGS, Tiny.PANTRY, Tiny.KITCHEN, ""));
        Drawn drawn = new Drawn(build, 7);
        int rows = 0;
        for (DogNeed dog : build.needs.dogs()) {
            for (PantryItem item : build.household.pantry()) {
                var supplement = item.food().supplement();
                if (supplement == null) {
                    continue;
                }
                double most = dog.dog().name().equals("Elm")
                        ? supplement.mostGramsPer1000KcalGrowing()
                        : supplement.mostGramsPer1000Kcal();
                String words = dog.dog().name() + ": " + item.food().label() + " at most ";
                boolean there = build.model.rows().stream()
                        .anyMatch(row ->
                                row.name().startsWith(words) && row.name().endsWith(" g per 1000 kcal"));
                if (!there) {
                    assertThat(most).isInfinite();
                    continue;
                }
                rows++;
                Row<Wish> row = build.model.rows().stream()
                        .filter(each ->
                                each.name().startsWith(words) && each.tag().kind() == Wish.Kind.FOOD_LIMIT)
                        .findFirst()
                        .orElseThrow();
                double grams = drawn.of(dog, each -> each.equals(item) ? 1 : 0);
                double kcal = drawn.of(dog, RecountTest::kcal);
                same(row, drawn, grams - most * (1 - build.rules().roundingReserve()) * kcal / 1000);
                assertThat(row.upper()).isZero();
                assertThat(row.tag().size()).isCloseTo(most * dog.kcalPerBatch() / 1000, within(1e-9));
            }
        }
        assertThat(rows).isPositive();
    }
}
