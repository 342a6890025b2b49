package packpot.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import packpot.dog.Dog;
import packpot.dog.LifeStage;
import packpot.dog.WeightFigures;
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
import packpot.words.Amount;
import packpot.words.Sentence;
import packpot.words.Term;

/** What people must be told beside the figures. */
final class Cautions {

    /** Nutrients of which too much soon harms. */
    private static final List<String> RISKY =
            List.of("vitamin-a", "vitamin-d", "selenium", "copper", "iodine", "zinc", "iron");

    private Cautions() {}

    static List<Sentence> of(
            Household household,
            Knowledge knowledge,
            Needs needs,
            Collection<PantryItem> pot,
            List<Plan.DogPlan> dogs,
            Plan.Batch batch) {
        Set<Sentence> cautions = new LinkedHashSet<>(household.cautions());
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
                cautions.add(Sentence.of(
                        "caution.staysOut",
                        food(item),
                        avoiders.stream().map(Dog::name).toList()));
            }
        }
        kitchen(knowledge, batch, cautions);
        freezing(household, knowledge, batch, cautions);
        return new ArrayList<>(cautions);
    }

    private static void dog(DogNeed need, Knowledge knowledge, Household household, Set<Sentence> cautions) {
        Dog dog = need.dog();
        String name = dog.name();
        LifeStage stage = need.energy().stage();
        if (stage.asksForVeterinarian()) {
            cautions.add(Sentence.of(
                    stage.builds() ? "caution.weighWeekly" : "caution.weighEveryTwoWeeks", name, stage.term()));
        }
        if (stage == LifeStage.GROWTH) {
            cautions.add(Sentence.of("caution.calcium", name));
        }
        if (stage == LifeStage.WEIGHT_LOSS) {
            WeightFigures figures = knowledge.overTime().figures();
            cautions.add(Sentence.of(
                    "caution.safeLoss",
                    name,
                    number(100 * figures.leastSharePerWeek(true)),
                    number(100 * figures.mostSharePerWeek(true))));
        }
        boolean adult = need.energy().stage() == LifeStage.ADULT;
        Double goal = dog.goalKg();
        boolean towardGoal =
                need.energy().stage() == LifeStage.WEIGHT_LOSS || need.energy().stage() == LifeStage.WEIGHT_GAIN;
        if (goal != null && !adult && !towardGoal) {
            cautions.add(Sentence.of("caution.goalNotPlanned", name, stage.term()));
        }
        Integer score = dog.conditionScore();
        if (score != null && (score <= 3 || score >= 7)) {
            Double ideal = knowledge.energy().idealKg(dog);
            cautions.add(
                    ideal == null || score <= 3 || goal != null
                            ? Sentence.of("caution.condition", name, score)
                            : Sentence.of(
                                    "caution.heavy",
                                    name,
                                    score,
                                    new Amount(Show.bodyWeight(ideal, household.units()))));
        }
        if (dog.otherKcalPerDay()
                > knowledge.energy().mostTreatShare() * need.energy().kcalPerDay()) {
            cautions.add(Sentence.of("caution.treats", name));
        }
        if (need.raisedBy() > 1) {
            cautions.add(Sentence.of("caution.raised", name, number(Math.round(need.raisedBy() * 100) / 100.0)));
        }
    }

    private static void food(PantryItem item, Knowledge knowledge, Set<Sentence> cautions) {
        String label = item.food().label();
        Supplement supplement = item.food().supplement();
        if (supplement != null && !supplement.caution().isEmpty()) {
            Term caution = new Term("supplement", item.food().id(), supplement.caution());
            cautions.add(Sentence.of("caution.food", food(item), caution));
            return;
        }
        if (item.food().found().equals("label")) {
            List<Term> unknown = notStated(item, knowledge);
            cautions.add(
                    unknown.isEmpty()
                            ? Sentence.of("caution.label", food(item))
                            : Sentence.of("caution.labelLeavesOut", food(item), unknown));
        }
        for (UnsafeFoods.UnsafeFood unsafe :
                knowledge.unsafeFoods().inName(label + " / " + item.food().name())) {
            Term advice = unsafe.advice().isEmpty()
                    ? new Term("harm", unsafe.id(), unsafe.why())
                    : new Term("advice", unsafe.id(), unsafe.advice());
            cautions.add(Sentence.of("caution.food", food(item), advice));
        }
    }

    private static Term food(PantryItem item) {
        return Term.food(item.food().id(), item.food().label());
    }

    private static Amount number(double figure) {
        return new Amount(Show.number(figure));
    }

    /** What a label leaves out cannot be held against a maximum. */
    private static List<Term> notStated(PantryItem item, Knowledge knowledge) {
        return RISKY.stream()
                .map(key -> knowledge.nutrients().get(key))
                .filter(nutrient -> nutrient.towardMaximum().keySet().stream()
                        .noneMatch(item.food().composition()::knows))
                .map(nutrient -> Term.nutrient(nutrient.key(), nutrient.label()))
                .toList();
    }

    /** What every batch needs to be told. */
    private static void kitchen(Knowledge knowledge, Plan.Batch batch, Set<Sentence> cautions) {
        KitchenFigures figures = knowledge.kitchen();
        double celsius = figures.number("reheatCelsius");
        cautions.add(Sentence.of(
                "caution.cook",
                whole(celsius),
                whole(celsius * 9 / 5 + 32),
                whole(figures.number("roomTemperatureHoursMax")),
                whole(figures.number("coolingDepthCentimetresMax"))));
        Integer loads = batch.potLoads();
        if (loads != null && loads > 1) {
            cautions.add(Sentence.of("caution.loads", loads));
        }
        cautions.add(Sentence.of("caution.newFood"));
    }

    private static int whole(double figure) {
        return (int) Math.round(figure);
    }

    private static void freezing(Household household, Knowledge knowledge, Plan.Batch batch, Set<Sentence> cautions) {
        Freezer freezer = household.kitchen().freezer();
        if (freezer == null || batch.bagsFrozen() == 0) {
            return;
        }
        double frozenGrams = batch.cookedGrams() * household.kitchen().frozenShare();
        double perDay = knowledge.kitchen().number("freezingRateUpperGramsPerLitreDay") * freezer.ratedMl() / 1000;
        if (frozenGrams > perDay) {
            int nights = (int) Math.ceil(frozenGrams / perDay);
            cautions.add(Sentence.of(
                    nights > batch.fridgeDays() ? "caution.freezesTooLittle" : "caution.freezesSlowly",
                    new Amount(Show.weight(perDay, household.units())),
                    new Amount(Show.weight(frozenGrams, household.units())),
                    nights));
        }
    }
}
