package packpot.plan;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.words.Sentence;

/**
 * A finished plan in amounts that a kitchen can measure: pure data, printed as it stands and audited as it stands.
 * Units are part of the names; money is in {@code currency}.
 */
public record Plan(
        String household,
        LocalDate start,
        int days,
        int mealsPerDay,
        String currency,
        Sentence foodEnergyRule,
        double marginShare,
        List<DogPlan> dogs,
        List<Purchase> shopping,
        List<Ingredient> pot,
        Batch batch,
        Cost cost,
        Proof proof,
        List<String> atTheirLimit,
        List<Sentence> defaults,
        List<Sentence> cautions) {

    public Plan {
        dogs = List.copyOf(dogs);
        shopping = List.copyOf(shopping);
        pot = List.copyOf(pot);
        atTheirLimit = List.copyOf(atTheirLimit);
        defaults = List.copyOf(defaults);
        cautions = List.copyOf(cautions);
    }

    /** The same plan, of which something else is proved. */
    public Plan withProof(Proof other) {
        return new Plan(
                household,
                start,
                days,
                mealsPerDay,
                currency,
                foodEnergyRule,
                marginShare,
                dogs,
                shopping,
                pot,
                batch,
                cost,
                other,
                atTheirLimit,
                defaults,
                cautions);
    }

    /**
     * One dog and its bowls.
     *
     * @param lifeStage in words
     * @param energyNeedKcalPerDay treats and other food included
     * @param otherFoodKcalPerDay treats and other food
     * @param energyEquation in words
     * @param energyFound text, memory or owner
     * @param minimumsRaisedBy factor on the profile's minimums; 1 when they stand as published
     * @param batchKcalPerDay what the batch must bring
     * @param firstDay first day of the batch on which the dog is fed from it, the first being 1
     * @param daysFed days on which it is fed from the batch
     * @param potGramsPerDay cooked food
     * @param potGramsPerMeal one figure a meal
     * @param scoopPerMeal the largest of them in a measure by volume
     */
    public record DogPlan(
            String name,
            double weightKg,
            String lifeStage,
            double energyNeedKcalPerDay,
            double otherFoodKcalPerDay,
            Sentence energyEquation,
            String energyFound,
            String energySource,
            String profile,
            double minimumsRaisedBy,
            double batchKcalPerDay,
            int firstDay,
            int daysFed,
            int potGramsPerDay,
            List<Integer> potGramsPerMeal,
            String scoopPerMeal,
            List<Addition> additions) {
        public DogPlan {
            potGramsPerMeal = List.copyOf(potGramsPerMeal);
            additions = List.copyOf(additions);
        }

        /** Grams of cooked food over the batch. */
        public double potGramsInBatch() {
            return (double) potGramsPerDay * daysFed;
        }
    }

    /**
     * What goes on top of one dog's bowl.
     *
     * @param dose for people, such as "1/4 tsp"
     * @param gramsPerDose of the supplement
     * @param onDays days of the batch on which one dose is given, the first day being 1
     */
    public record Addition(String food, String label, String dose, double gramsPerDose, List<Integer> onDays) {
        public Addition {
            onDays = List.copyOf(onDays);
        }

        /** Grams over the whole batch. */
        public double gramsInBatch() {
            return gramsPerDose * onDays.size();
        }
    }

    /**
     * One food in the pot.
     *
     * @param stirredIn whether it is a supplement that goes into the whole batch at the end
     * @param grams edible, as weighed before cooking
     * @param measure the same in a kitchen measure; empty where a scale is the measure
     * @param method how it is cooked, in a word
     * @param preparation the same in words
     * @param cookedGrams after cooking
     * @param shareOfCookedMass of the whole batch
     */
    public record Ingredient(
            String food,
            String label,
            boolean stirredIn,
            double grams,
            String measure,
            String method,
            String preparation,
            double cookedGrams,
            double shareOfCookedMass) {}

    /**
     * One line of the shopping list.
     *
     * @param section of the shop
     * @param packs to buy; null for a food sold by weight
     * @param buyGramsAsBought label weight of what is bought
     * @param usedGrams edible grams into pot and bowls
     * @param fromHandGrams of that, out of what is in the house
     * @param leftOverGrams edible grams of bought packs that stay
     * @param pays money at the till
     */
    public record Purchase(
            String food,
            String label,
            String section,
            @Nullable Integer packs,
            String pack,
            double buyGramsAsBought,
            double usedGrams,
            double fromHandGrams,
            double leftOverGrams,
            double pays) {}

    /**
     * The cooked batch.
     *
     * @param potLoads times that the pot is filled; null when no pot is given
     * @param bags in all, of which those of the first days stay in the fridge
     * @param bagsFrozen that go into the freezer on the cook day
     * @param freezerMl that they take, air between them included: a bag that is not full lies flatter; null without a
     *     freezer
     * @param spareGrams of cooked food beyond all portions
     */
    public record Batch(
            double cookedGrams,
            double millilitres,
            @Nullable Integer potLoads,
            String bag,
            int bags,
            double gramsPerBag,
            int bagsFrozen,
            int fridgeDays,
            @Nullable Double freezerMl,
            @Nullable Double freezerFreeMl,
            double spareGrams) {
        /** What one bag really holds. */
        public double millilitresPerBag() {
            return millilitres / bags;
        }
    }

    /**
     * What it costs.
     *
     * @param atTheTill money paid for shopping
     * @param ofTheBatch the same less what left-over parts are worth
     */
    public record Cost(double atTheTill, double ofTheBatch, double perDay, List<DogCost> perDogPerDay) {
        public Cost {
            perDogPerDay = List.copyOf(perDogPerDay);
        }
    }

    /** What one dog's bowls cost on a day on which it is fed. */
    public record DogCost(String dog, double perDay) {}

    /**
     * How good the plan is proved to be.
     *
     * @param cost of the plan before the kitchen's rounding
     * @param noPlanBelow no plan under the same wishes costs less
     * @param gapShare how far the plan may be off, as a share of its cost
     */
    public record Proof(boolean provedOptimal, double cost, double noPlanBelow, double gapShare, double solveSeconds) {}
}
