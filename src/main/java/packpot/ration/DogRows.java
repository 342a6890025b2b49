package packpot.ration;

import packpot.food.Nutrient;
import packpot.food.Nutrients;
import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.household.Wish;
import packpot.needs.DogNeed;
import packpot.needs.Requirement;
import packpot.profile.Limit;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;
import packpot.units.Show;

/**
 * Energy and nutrients of each dog.
 *
 * <p>With the dog's share s[d] of the pot, E[d] = s[d] pot energy + &Sigma; e[j] y[j,d], kept in a band around the
 * target. For a nutrient n, got[n,d] = s[d] pot[n] + &Sigma; a[n,j] y[j,d]; got &ge; (1 + margin) lo E / 1000; got &le;
 * hi E / 1000; a dependent minimum adds slope (got[per] - threshold E / 1000); a ratio r of two nutrients is got[num]
 * &ge; (1 + margin) r got[den] or &le; r got[den]. A supplement with a limit of its own keeps s[d] x + y &le; most E / 1000. A small reserve on every limit is kept for the rounding of the kitchen.
 */
final class DogRows {

    private DogRows() {}

    static void add(Build build) {
        for (DogNeed dog : build.needs.dogs()) {
            energy(build, dog);
            for (Requirement requirement : dog.requirements()) {
                if (build.knowledge.nutrients().isRatio(requirement.limit().nutrient())) {
                    ratio(build, dog, requirement);
                } else {
                    nutrient(build, dog, requirement);
                }
            }
            build.household.pantry().forEach(item -> supplementCap(build, dog, item));
        }
    }

    private static void supplementCap(Build build, DogNeed dog, PantryItem item) {
        Supplement supplement = item.food().supplement();
        double most = supplement == null ? Double.POSITIVE_INFINITY : Bearable.ownLimit(supplement, dog);
        if (Double.isInfinite(most)) {
            return;
        }
        Expression grams = new Expression();
        build.potGrams.forEach(
                (food, variable) -> grams.add(food.item().equals(item) ? build.share(dog) : 0, variable));
        build.dosesOf(dog)
                .forEach((addition, count) ->
                        grams.add(addition.item().equals(item) ? build.doseGrams(addition, dog) : 0, count));
        if (grams.isEmpty()) {
            return;
        }
        String words =
                dog.dog().name() + ": " + item.food().label() + " at most " + Show.number(most) + " g per 1000 kcal";
        var row = build.model.atMost(
                words,
                grams.add(-most * (1 - build.rules().roundingReserve()) / 1000, dogKcal(build, dog)),
                0,
                wish(Wish.Kind.FOOD_LIMIT, dog, item.food().label(), words, most * dog.kcalPerBatch() / 1000));
        build.slope(
                row,
                most,
                "g per 1000 kcal",
                Lever.handy(most),
                new Expression().add(-(1 - build.rules().roundingReserve()) / 1000, dogKcal(build, dog)));
    }

    private static void energy(Build build, DogNeed dog) {
        String name = dog.dog().name();
        double target = dog.kcalPerBatch();
        Variable kcal =
                build.model.variable("kcal of " + name, 0, build.limitsAsRows ? Double.POSITIVE_INFINITY : 2 * target);
        build.dogKcal.put(dog, kcal);
        Expression sum = new Expression().add(-1, kcal).add(build.share(dog), build.potKcal);
        build.dosesOf(dog)
                .forEach((addition, count) -> sum.add(addition.kcalPerGram() * build.doseGrams(addition, dog), count));
        build.model.equal("kcal of " + name, sum, 0, null);
        double band = build.rules().energyBand();
        var row = build.model.row(
                "energy target of " + name,
                new Expression().add(1, kcal),
                target * (1 - band),
                target * (1 + band),
                new Wish(
                        Wish.Kind.ENERGY,
                        name,
                        "energy",
                        name + ": " + Show.number(dog.kcalPerDay()) + " kcal a day from the batch",
                        target));
        double percent = target / 100;
        build.lever(
                row,
                100 * band,
                "% that the model may miss the energy target by",
                1,
                (variant, change) -> variant.shift(row, -change * percent, change * percent));
    }

    private static void nutrient(Build build, DogNeed dog, Requirement requirement) {
        Limit limit = requirement.limit();
        Nutrient nutrient = build.knowledge.nutrients().get(limit.nutrient());
        double reserve = build.rules().roundingReserve();
        double margin = build.rules().margin();
        double batchThousands = dog.kcalPerBatch() / 1000;
        Variable kcal = dogKcal(build, dog);
        String words = words(dog, nutrient.label(), requirement, nutrient.unit() + " per 1000 kcal");
        double size = requirement.per1000Kcal() * batchThousands;
        String unit = nutrient.unit() + " per 1000 kcal";
        double step = Lever.handy(requirement.per1000Kcal());
        switch (limit.kind()) {
            case MINIMUM ->
                build.slope(
                        build.model.atLeast(
                                words,
                                build.dogNutrient(dog, nutrient, false)
                                        .add(-requirement.per1000Kcal() * (1 + margin) * (1 + reserve) / 1000, kcal),
                                0,
                                wish(Wish.Kind.NUTRIENT_MINIMUM, dog, nutrient.label(), words, size)),
                        requirement.per1000Kcal(),
                        unit,
                        -step,
                        new Expression().add(-(1 + margin) * (1 + reserve) / 1000, kcal));
            case MAXIMUM ->
                build.slope(
                        build.model.atMost(
                                words,
                                build.dogNutrient(dog, nutrient, true)
                                        .add(-requirement.per1000Kcal() * (1 - reserve) / 1000, kcal),
                                0,
                                wish(Wish.Kind.NUTRIENT_MAXIMUM, dog, nutrient.label(), words, size)),
                        requirement.per1000Kcal(),
                        unit,
                        step,
                        new Expression().add(-(1 - reserve) / 1000, kcal));
            case DEPENDENT_MINIMUM -> {
                Nutrient per = build.knowledge.nutrients().get(String.valueOf(limit.per()));
                double base = plainMinimum(dog, limit.nutrient());
                String rises = dog.dog().name() + ": " + nutrient.label() + " rising with " + per.label();
                var row = build.model.atLeast(
                        rises,
                        build.dogNutrient(dog, nutrient, false)
                                .add(-base * (1 + margin) * (1 + reserve) / 1000, kcal)
                                .add(-limit.value() * (1 + reserve), build.dogNutrient(dog, per, false))
                                .add(limit.value() * (1 + reserve) * limit.threshold() / 1000, kcal),
                        0,
                        wish(
                                Wish.Kind.NUTRIENT_MINIMUM,
                                dog,
                                nutrient.label() + " rising with " + per.label(),
                                rises,
                                base * batchThousands));
                build.slope(
                        row,
                        limit.value(),
                        nutrient.unit() + " per " + per.unit() + " of " + per.label(),
                        -Lever.handy(limit.value()),
                        new Expression()
                                .add(-(1 + reserve), build.dogNutrient(dog, per, false))
                                .add((1 + reserve) * limit.threshold() / 1000, kcal));
            }
        }
    }

    private static double plainMinimum(DogNeed dog, String nutrient) {
        return dog.requirements().stream()
                .filter(r -> r.limit().kind() == Limit.Kind.MINIMUM
                        && r.limit().nutrient().equals(nutrient))
                .mapToDouble(Requirement::per1000Kcal)
                .findFirst()
                .orElse(0);
    }

    private static void ratio(Build build, DogNeed dog, Requirement requirement) {
        Nutrients.Ratio ratio =
                build.knowledge.nutrients().ratio(requirement.limit().nutrient());
        boolean most = requirement.limit().kind() == Limit.Kind.MAXIMUM;
        double reserve = build.rules().roundingReserve();
        double held = most ? 1 - reserve : (1 + reserve) * (1 + build.rules().margin());
        Expression difference = build.dogNutrient(dog, ratio.numerator(), most)
                .add(-held * requirement.per1000Kcal(), build.dogNutrient(dog, ratio.denominator(), !most));
        String words = words(dog, ratio.label(), requirement, ": 1");
        Wish wish = wish(Wish.Kind.RATIO, dog, ratio.label(), words, dog.kcalPerBatch() / 1000);
        var row =
                most ? build.model.atMost(words, difference, 0, wish) : build.model.atLeast(words, difference, 0, wish);
        double step = Lever.handy(requirement.per1000Kcal());
        build.slope(
                row,
                requirement.per1000Kcal(),
                ": 1",
                most ? step : -step,
                new Expression().add(-held, build.dogNutrient(dog, ratio.denominator(), !most)));
    }

    private static Variable dogKcal(Build build, DogNeed dog) {
        Variable kcal = build.dogKcal.get(dog);
        if (kcal == null) {
            throw new IllegalStateException("the energy of " + dog.dog().name() + " comes first");
        }
        return kcal;
    }

    private static String words(DogNeed dog, String what, Requirement requirement, String unit) {
        String most = requirement.limit().kind() == Limit.Kind.MAXIMUM ? " at most " : " at least ";
        return dog.dog().name() + ": " + what + most + Show.number(requirement.per1000Kcal()) + " " + unit;
    }

    private static Wish wish(Wish.Kind kind, DogNeed dog, String what, String words, double size) {
        return new Wish(kind, dog.dog().name(), what, words, size);
    }
}
