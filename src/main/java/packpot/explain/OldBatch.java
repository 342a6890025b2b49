package packpot.explain;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.Finding;
import packpot.audit.NutrientLine;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.dog.Dog;
import packpot.household.Avoidance;
import packpot.household.Freezer;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.PantryItem;
import packpot.household.Recipe;
import packpot.needs.DogNeed;
import packpot.needs.Needs;
import packpot.plan.Plan;
import packpot.units.Show;

/**
 * A batch that is cooked already, before dogs and a kitchen that it was not planned for: what each dog gets of it, how long
 * it lasts, and what is wrong with it for them now.
 */
final class OldBatch {
    private static final double CLOSE = 1e-6;

    private final Planner.Result.Planned old;
    private final Plan plan;
    private final Household now;
    private final Knowledge knowledge;
    private final int fedDays;
    private final Map<String, PantryItem> items = new HashMap<>();

    OldBatch(Planner.Result.Planned old, Household now, Knowledge knowledge, int fedDays) {
        this.old = old;
        this.plan = old.plan();
        this.now = now;
        this.knowledge = knowledge;
        this.fedDays = fedDays;
        old.household().pantry().forEach(item -> items.put(item.food().id(), item));
    }

    /** Labels of what the pot holds that a dog must not get. */
    private List<String> forbidden(Dog dog) {
        List<String> labels = new ArrayList<>();
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = items.get(ingredient.food());
            if (item != null && Avoidance.avoids(dog, item.food())) {
                labels.add(ingredient.label());
            }
        }
        return labels;
    }

    /** Dogs that must not get it. */
    List<String> notFed() {
        return now.dogs().stream()
                .filter(dog -> !forbidden(dog).isEmpty())
                .map(Dog::name)
                .toList();
    }

    /** What each of the others gets; a dog that needs what it needed goes on with its portion. */
    List<Carried.Portion> portions() {
        List<Carried.Portion> portions = new ArrayList<>();
        double kcalPerGram = kcalPerCookedGram();
        for (DogNeed need : Needs.of(now, knowledge).dogs()) {
            Integer leaves = need.dog().course().leavesDay();
            boolean gone = leaves != null && leaves <= fedDays;
            if (gone || !forbidden(need.dog()).isEmpty()) {
                continue;
            }
            Plan.DogPlan was = was(need.dog());
            double kcal = need.kcalPerDay();
            int grams = was == null
                    ? (int) Math.round(kcal / kcalPerGram)
                    : (int) Math.round(was.potGramsPerDay() + (kcal - was.batchKcalPerDay()) / kcalPerGram);
            portions.add(new Carried.Portion(need.dog().name(), Math.max(0, grams), kcal));
        }
        return portions;
    }

    /** Days that what is left of it feeds the dogs that get it. */
    int lasts(List<Carried.Portion> portions) {
        double left = leftGrams();
        int day = fedDays;
        while (feeds(left, eatenOn(day, portions), day)) {
            left -= eatenOn(day, portions);
            day++;
        }
        return day - fedDays;
    }

    /** A planned day on which nobody is there needs no food. */
    private boolean feeds(double left, double eaten, int day) {
        return eaten > 0
                ? eaten <= left + CLOSE * eaten
                : day < now.kitchen().days()
                        && now.dogs().stream().noneMatch(dog -> dog.course().isThere(day));
    }

    private double eatenOn(int day, List<Carried.Portion> portions) {
        double grams = 0;
        for (Carried.Portion portion : portions) {
            boolean there = now.dogs().stream()
                    .anyMatch(dog ->
                            dog.name().equals(portion.dog()) && dog.course().isThere(day));
            grams += there ? portion.gramsPerDay() : 0;
        }
        return grams;
    }

    /** Grams of the portions of the days that were not fed yet; each dog has them on its own days. */
    private double leftGrams() {
        double grams = 0;
        for (Plan.DogPlan dog : plan.dogs()) {
            int end = dog.firstDay() - 1 + dog.daysFed();
            grams += (double) dog.potGramsPerDay() * Math.max(0, end - Math.max(fedDays, dog.firstDay() - 1));
        }
        return grams;
    }

    private Plan.@Nullable DogPlan was(Dog dog) {
        return plan.dogs().stream()
                .filter(each -> each.name().equals(dog.name()))
                .findFirst()
                .orElse(null);
    }

    private double kcalPerCookedGram() {
        Dog any = old.household().dogs().get(0);
        return verdict(any, 1, null).dogs().get(0).kcalPerDay()
                * plan.days()
                / plan.batch().cookedGrams();
    }

    /** What so large a part of the pot is to one dog over all days, with what it got on top on a day so far. */
    private RecipeVerdict verdict(Dog dog, double part, Plan.@Nullable DogPlan was) {
        List<Recipe.Part> foods = new ArrayList<>();
        for (Plan.Ingredient ingredient : plan.pot()) {
            PantryItem item = items.get(ingredient.food());
            if (item != null) {
                foods.add(new Recipe.Part(item, ingredient.grams() * part, ""));
            }
        }
        List<Recipe.Addition> onTop = new ArrayList<>();
        for (Plan.Addition addition : was == null ? List.<Plan.Addition>of() : was.additions()) {
            PantryItem item = items.get(addition.food());
            if (item != null && was != null) {
                onTop.add(new Recipe.Addition(dog.name(), item, addition.gramsInBatch() / was.daysFed(), ""));
            }
        }
        Recipe recipe = new Recipe(plan.household(), plan.days(), List.of(dog), foods, onTop, List.of());
        return RecipeAudit.check(recipe, recipe.in(now), knowledge);
    }

    /** What people must know before they go on feeding it, in sentences; the gravest first. */
    List<String> warnings(List<Carried.Portion> portions) {
        List<String> warnings = new ArrayList<>();
        for (Dog dog : now.dogs()) {
            List<String> forbidden = forbidden(dog);
            if (!forbidden.isEmpty()) {
                warnings.add(dog.name() + " must not get the old batch: it holds " + String.join(", ", forbidden) + ". "
                        + dog.name() + " needs other food until the next batch, which is not planned here");
            }
        }
        for (Carried.Portion portion : portions) {
            now.dogs().stream()
                    .filter(dog -> dog.name().equals(portion.dog()))
                    .forEach(dog -> nutrition(dog, portion, warnings));
        }
        freezer(warnings);
        return warnings;
    }

    private void nutrition(Dog dog, Carried.Portion portion, List<String> warnings) {
        Plan.DogPlan was = was(dog);
        double part = portion.gramsPerDay() * plan.days() / plan.batch().cookedGrams();
        RecipeVerdict verdict = verdict(dog, part, was);
        List<String> misses = new ArrayList<>();
        for (DogAudit audit : verdict.dogs()) {
            audit.nutrients().forEach(line -> miss(line, misses));
        }
        verdict.safety().stream().map(Finding::message).forEach(misses::add);
        if (!misses.isEmpty()) {
            warnings.add(dog.name() + " does not get all it needs from the old batch, with "
                    + (was == null ? "nothing on top" : "what it got on top so far") + ": "
                    + String.join("; ", misses));
        }
    }

    private static void miss(NutrientLine line, List<String> misses) {
        Double minimum = line.minimum();
        Double maximum = line.maximum();
        String unit = line.unit().isEmpty() ? "" : " " + line.unit() + " per 1000 kcal";
        if (minimum != null && line.tooLittle()) {
            misses.add(line.label() + " " + Show.number(line.got()) + " of at least " + Show.number(minimum) + unit);
        }
        if (maximum != null && line.tooMuch()) {
            misses.add(line.label() + " " + Show.number(line.gotAgainstMaximum()) + ", at most " + Show.number(maximum)
                    + unit);
        }
    }

    /** Bags that are frozen still, in the freezer as it is now. */
    private void freezer(List<String> warnings) {
        Freezer freezer = now.kitchen().freezer();
        if (freezer == null) {
            return;
        }
        double mlPerBag = plan.batch().millilitresPerBag();
        double portions =
                plan.dogs().stream().mapToDouble(Plan.DogPlan::potGramsInBatch).sum();
        int left = (int) Math.ceil(plan.batch().bags() * leftGrams() / portions - CLOSE);
        int frozen = Math.min(plan.batch().bagsFrozen(), left);
        int room = (int) Math.floor(freezer.freeForFoodMl() / mlPerBag + CLOSE);
        if (frozen > room) {
            double takes = frozen * mlPerBag / freezer.packingShare();
            double free = freezer.freeForFoodMl() / freezer.packingShare();
            warnings.add("the freezer does not hold the old batch: its " + frozen + " frozen bags take "
                    + Show.volume(takes, now.units()) + ", and " + Show.volume(free, now.units()) + " are free, for "
                    + room + (room == 1 ? " bag" : " bags")
                    + ". What does not go in keeps only as long as the fridge days");
        }
    }
}
