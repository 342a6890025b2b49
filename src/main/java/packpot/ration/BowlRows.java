package packpot.ration;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import packpot.dog.LifeStage;
import packpot.food.Dosing;
import packpot.food.Supplement;
import packpot.household.Avoidance;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;

/**
 * What one dog alone gets on top of its portion.
 *
 * <p>For each addition j and dog d of kind c: k[j,d] whole doses and v[j,c], given at all; k[j,d] &le; most[j,d] v[j,c];
 * &Sigma;<sub>j</sub> v[j,c] within the most additions; for adults v[j,c] + u[j] &le; 1, in the bowl or in the pot; mass and energy of the additions within a share of the bowl's.
 */
final class BowlRows {
    private BowlRows() {}

    static void add(Build build) {
        Map<String, Map<Prepared, Variable>> givenByKind = new HashMap<>();
        for (DogNeed dog : build.needs.dogs()) {
            Map<Prepared, Variable> doses = new LinkedHashMap<>();
            build.doses.put(dog, doses);
            Map<Prepared, Variable> given = givenByKind.computeIfAbsent(kind(dog), key -> new LinkedHashMap<>());
            Expression kinds = new Expression();
            Expression grams = new Expression();
            Expression kcal = new Expression();
            for (Prepared addition : build.bowlFoods) {
                double most = mostDoses(build, dog, addition);
                boolean avoided = Avoidance.avoids(dog.dog(), addition.item().food());
                if (most < 1 || (avoided && !build.limitsAsRows)) {
                    continue;
                }
                String name =
                        addition.item().food().label() + " for " + dog.dog().name();
                Variable count = build.model.whole(name + " doses", 0, most);
                Variable choice = given.computeIfAbsent(addition, key -> choice(build, dog, addition));
                build.model.atMost(
                        name + " only when given",
                        new Expression().add(1, count).add(-most, choice),
                        0,
                        null);
                doses.put(addition, count);
                if (avoided) {
                    Avoiding.add(build, dog.dog(), addition, count);
                }
                kinds.add(1, choice);
                grams.add(build.doseGrams(addition, dog), count);
                kcal.add(build.doseGrams(addition, dog) * addition.kcalPerGram(), count);
            }
            limits(build, dog, kinds, grams, kcal);
        }
    }

    /** For adults at maintenance what is stirred into the whole batch is not measured into bowls again. */
    private static Variable choice(Build build, DogNeed dog, Prepared addition) {
        // Named by the kind alone, so that it is the same choice whichever dogs of that kind there are.
        String name = addition.item().food().label() + " for " + kind(dog);
        Variable choice = build.model.choice(name + " given");
        build.given.add(choice);
        build.inPot.forEach((food, inPot) -> {
            if (dog.energy().stage() == LifeStage.ADULT && food.item().equals(addition.item())) {
                build.model.atMost(
                        name + " in pot or bowl", new Expression().add(1, inPot).add(1, choice), 1, null);
            }
        });
        return choice;
    }

    /** Dogs of one kind get the same additions in doses of their own: fewer jars on the table, and fewer choices. */
    private static String kind(DogNeed dog) {
        return dog.profile().title() + " " + dog.energy().stage();
    }

    private static double mostDoses(Build build, DogNeed dog, Prepared addition) {
        Supplement supplement = addition.item().food().supplement();
        boolean spread = supplement != null && supplement.dosing() == Dosing.SPREAD;
        double counted = dog.heads() * (spread ? dog.days() : supplement == null ? 0 : supplement.mostDosesPerDay());
        if (build.limitsAsRows) {
            return counted;
        }
        double inReach = addition.item().outOfStock() ? addition.item().onHandGrams() : Double.POSITIVE_INFINITY;
        double bearable = Bearable.grams(build, addition, dog, dog.kcalPerBatch());
        double most = Math.floor(Math.min(inReach, bearable) / build.doseGrams(addition, dog));
        return Math.min(most, counted);
    }

    private static void limits(Build build, DogNeed dog, Expression kinds, Expression grams, Expression kcal) {
        if (kinds.isEmpty()) {
            return;
        }
        String name = dog.dog().name();
        var shape = build.household.shape();
        int most = shape.mostAdditions(dog.energy().stage());
        var count = build.model.atMost(
                "additions for " + name,
                kinds,
                most,
                new Wish(
                        Wish.Kind.ADDITIONS,
                        name,
                        "additions",
                        name + ": at most " + most + " different additions to the bowl",
                        1));
        build.side(count, most, "", 1, 1);
        double massShare = shape.additionsMostMassShare() * (1 - build.rules().roundingReserve());
        Expression mass =
                new Expression().add(1 - massShare, grams).add(-massShare * build.share(dog), build.cookedGrams);
        var massRow = build.model.atMost(
                "mass of additions for " + name,
                mass,
                0,
                new Wish(
                        Wish.Kind.ADDITIONS,
                        name,
                        "mass of additions",
                        name + ": additions at most " + Math.round(100 * shape.additionsMostMassShare())
                                + " % of the bowl's mass",
                        shape.additionsMostMassShare() * build.share(dog) * build.usualCookedGrams()));
        double perPercent = -(1 - build.rules().roundingReserve()) / 100;
        build.slope(
                massRow,
                100 * shape.additionsMostMassShare(),
                "% of the bowl's mass",
                1,
                new Expression().add(perPercent, grams).add(perPercent * build.share(dog), build.cookedGrams));
        if (!kcal.isEmpty()) {
            double mostKcal = shape.additionsMostEnergyShare() * dog.kcalPerDay() * dog.days();
            var energyRow = build.model.atMost(
                    "energy of additions for " + name,
                    kcal,
                    mostKcal,
                    new Wish(
                            Wish.Kind.ADDITIONS,
                            name,
                            "energy of additions",
                            name + ": additions at most " + Math.round(100 * shape.additionsMostEnergyShare())
                                    + " % of the bowl's energy",
                            mostKcal));
            build.side(
                    energyRow,
                    100 * shape.additionsMostEnergyShare(),
                    "% of the bowl's energy",
                    1,
                    dog.kcalPerBatch() / 100);
        }
    }
}
