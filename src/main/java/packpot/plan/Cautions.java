package packpot.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import packpot.dog.Dog;
import packpot.dog.LifeStage;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.units.Show;

/** What people must be told beside the figures. */
final class Cautions {

    private Cautions() {}

    static List<String> of(
            Household household,
            Knowledge knowledge,
            Needs needs,
            Collection<PantryItem> pot,
            List<Plan.DogPlan> dogs,
            Plan.Batch batch) {
        Set<String> cautions = new LinkedHashSet<>(household.cautions());
        needs.dogs().forEach(need -> dog(need, knowledge, household, cautions));
        Set<String> given = new LinkedHashSet<>();
        pot.forEach(item -> given.add(item.food().id()));
        dogs.forEach(dog -> dog.additions().forEach(addition -> given.add(addition.food())));
        for (PantryItem item : household.pantry()) {
            if (given.contains(item.food().id())) {
                food(item, knowledge, cautions);
            }
        }
        for (PantryItem item : household.pantry()) {
            List<Dog> avoiders = household.avoiders(item);
            if (!avoiders.isEmpty()) {
                cautions.add(item.food().label() + " stays out of the shared pot: "
                        + String.join(", ", avoiders.stream().map(Dog::name).toList()) + " must not get it");
            }
        }
        freezing(household, knowledge, batch, cautions);
        return new ArrayList<>(cautions);
    }

    private static void dog(DogNeed need, Knowledge knowledge, Household household, Set<String> cautions) {
        Dog dog = need.dog();
        String name = dog.name();
        if (need.energy().stage().asksForVeterinarian()) {
            cautions.add(name + " is " + need.energy().stage().words() + ": see a veterinarian before feeding this, and"
                    + " weigh " + name
                    + (need.energy().stage() == LifeStage.GROWTH ? " every week" : " every two weeks")
                    + "; plan again at each weighing");
        }
        boolean adult = need.energy().stage() == LifeStage.ADULT;
        Double goal = dog.goalKg();
        boolean towardGoal =
                need.energy().stage() == LifeStage.WEIGHT_LOSS || need.energy().stage() == LifeStage.WEIGHT_GAIN;
        if (goal != null && !adult && !towardGoal) {
            cautions.add(name + " is " + need.energy().stage().words() + ", so its goal weight is not planned for");
        }
        Integer score = dog.conditionScore();
        if (score != null && (score <= 3 || score >= 7)) {
            Double ideal = knowledge.energy().idealKg(dog);
            String about = ideal == null || score <= 3 || dog.goalKg() != null
                    ? ""
                    : "; its ideal weight may be about " + Show.bodyWeight(ideal, household.units())
                            + ", which \"goalWeight\" would plan for";
            cautions.add(name + " has a body condition of " + score + " of 9: see a veterinarian" + about);
        }
        if (dog.otherKcalPerDay()
                > knowledge.energy().mostTreatShare() * need.energy().kcalPerDay()) {
            cautions.add(name + " gets more than a tenth of its energy from treats and other food, which no profile is"
                    + " checked for here");
        }
        if (need.raisedBy() > 1) {
            cautions.add(name + " eats less than the profile assumes, so its minimums are raised by the factor "
                    + Show.number(Math.round(need.raisedBy() * 100) / 100.0));
        }
    }

    private static void food(PantryItem item, Knowledge knowledge, Set<String> cautions) {
        String label = item.food().label();
        Supplement supplement = item.food().supplement();
        if (supplement != null && !supplement.caution().isEmpty()) {
            cautions.add(label + ": " + supplement.caution());
        }
        for (UnsafeFoods.UnsafeFood unsafe :
                knowledge.unsafeFoods().inName(label + " / " + item.food().name())) {
            cautions.add(label + ": " + (unsafe.advice().isEmpty() ? unsafe.why() : unsafe.advice()));
        }
    }

    private static void freezing(Household household, Knowledge knowledge, Plan.Batch batch, Set<String> cautions) {
        Freezer freezer = household.kitchen().freezer();
        if (freezer == null || batch.bagsFrozen() == 0) {
            return;
        }
        double frozenGrams = batch.cookedGrams() * household.kitchen().frozenShare();
        double perDay = knowledge.kitchen().number("freezingRateUpperGramsPerLitreDay") * freezer.ratedMl() / 1000;
        if (frozenGrams > perDay) {
            int nights = (int) Math.ceil(frozenGrams / perDay);
            cautions.add("the freezer freezes about " + Show.weight(perDay, household.units())
                    + " of new food a day, and "
                    + Show.weight(frozenGrams, household.units()) + " are to be frozen: spread it over " + nights
                    + " nights"
                    + (nights > batch.fridgeDays()
                            ? ", more than the fridge days; cook in two sessions or use a second freezer"
                            : ", the rest waiting in the fridge"));
        }
    }
}
