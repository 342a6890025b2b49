package packpot.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import packpot.dog.Dog;
import packpot.dog.LifeStage;
import packpot.dog.WeightFigures;
import packpot.food.Nutrient;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.KitchenFigures;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.units.Show;

/** What people must be told beside the figures. */
final class Cautions {

    /** Nutrients of which too much soon harms. */
    private static final List<String> RISKY =
            List.of("vitamin-a", "vitamin-d", "selenium", "copper", "iodine", "zinc", "iron");

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
        kitchen(knowledge, batch, cautions);
        freezing(household, knowledge, batch, cautions);
        return new ArrayList<>(cautions);
    }

    private static void dog(DogNeed need, Knowledge knowledge, Household household, Set<String> cautions) {
        Dog dog = need.dog();
        String name = dog.name();
        LifeStage stage = need.energy().stage();
        if (stage.asksForVeterinarian()) {
            boolean weekly = stage.builds();
            cautions.add(name + " is " + stage.words() + ": see a veterinarian before feeding this, and weigh " + name
                    + (weekly ? " every week" : " every two weeks") + "; plan again at each weighing");
        }
        if (stage == LifeStage.GROWTH) {
            cautions.add(name + ": give no calcium beyond this plan; too much harms growing bones");
        }
        if (stage == LifeStage.WEIGHT_LOSS) {
            WeightFigures figures = knowledge.overTime().figures();
            cautions.add(name + ": a safe loss is " + Show.number(100 * figures.leastSharePerWeek(true))
                    + " to " + Show.number(100 * figures.mostSharePerWeek(true))
                    + " % of its weight a week; faster or slower, ask a veterinarian");
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
            return;
        }
        if (item.food().found().equals("label")) {
            cautions.add(label + ": keep to the dose on its label" + notStated(item, knowledge));
        }
        for (UnsafeFoods.UnsafeFood unsafe :
                knowledge.unsafeFoods().inName(label + " / " + item.food().name())) {
            cautions.add(label + ": " + (unsafe.advice().isEmpty() ? unsafe.why() : unsafe.advice()));
        }
    }

    /** What a label leaves out cannot be held against a maximum. */
    private static String notStated(PantryItem item, Knowledge knowledge) {
        List<String> unknown = RISKY.stream()
                .map(key -> knowledge.nutrients().get(key))
                .filter(nutrient -> nutrient.towardMaximum().keySet().stream()
                        .noneMatch(item.food().composition()::knows))
                .map(Nutrient::label)
                .toList();
        return unknown.isEmpty()
                ? ""
                : "; it does not state, so no maximum is checked for: " + String.join(", ", unknown);
    }

    /** What every batch needs to be told. */
    private static void kitchen(Knowledge knowledge, Plan.Batch batch, Set<String> cautions) {
        KitchenFigures figures = knowledge.kitchen();
        double celsius = figures.number("reheatCelsius");
        cautions.add(String.format(
                Locale.ROOT,
                "cook the pot until its middle reaches %.0f C (%.0f F); cool it within %.0f hours, no deeper than %.0f cm,"
                        + " before it goes into fridge or freezer; thaw bags in the fridge",
                celsius,
                celsius * 9 / 5 + 32,
                figures.number("roomTemperatureHoursMax"),
                figures.number("coolingDepthCentimetresMax")));
        Integer loads = batch.potLoads();
        if (loads != null && loads > 1) {
            cautions.add("the pot is filled " + loads + " times: divide every food and every supplement into " + loads
                    + " equal parts, or mix all loads in one bin before bagging");
        }
        cautions.add("a dog that ate something else changes over about ten days: a quarter of the new food on days 1-3,"
                + " half on days 4-6, three quarters on days 7-9");
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
