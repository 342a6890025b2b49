package packpot.household;

import org.jspecify.annotations.Nullable;
import packpot.food.Food;
import packpot.food.Keeps;
import packpot.food.Place;
import packpot.food.Preparation;

/**
 * One food that the household has or can buy. Grams are of the edible food in the state that it is weighed in, before
 * cooking; only a pack's label weight is as bought.
 *
 * @param packGrams edible grams in one pack; null when it is sold loose by weight
 * @param packAsBoughtGrams the same with bone, peel or brine
 * @param packName what a pack is called on the shopping list
 * @param packPrice money for one pack; for a loose food, money per gram
 * @param onHandGrams in the house already, at no cost
 * @param mustUseGrams least that goes into the pot; 0 when there is no such wish
 * @param atMostGrams most that goes into the pot and bowls together; null when there is no such wish
 * @param wholePacksOnly an opened pack is used up
 * @param outOfStock the shop has none; what is on hand can still be used
 */
public record PantryItem(
        Food food,
        Preparation preparation,
        @Nullable Double packGrams,
        @Nullable Double packAsBoughtGrams,
        String packName,
        double packPrice,
        double onHandGrams,
        double mustUseGrams,
        @Nullable Double atMostGrams,
        boolean wholePacksOnly,
        boolean outOfStock,
        Place place) {

    /** A food stands once in a pantry; hashing every figure would take longer than it saves. */
    @Override
    public int hashCode() {
        return food.id().hashCode();
    }

    public boolean isLoose() {
        return packGrams == null;
    }

    /** Whether what is left of an opened pack is still good on the next cook day. */
    public boolean keeps() {
        return food.isSupplement() || food.kitchen().keeps() != Keeps.PERISHABLE;
    }

    /** Money per edible gram. */
    public double pricePerGram() {
        Double pack = packGrams;
        return pack == null ? packPrice : packPrice / pack;
    }

    /** The same food, which need not and may be used in any amount. */
    public PantryItem withoutWishes() {
        return with(preparation, onHandGrams, 0, null, false, outOfStock, place);
    }

    /** The same food cooked another way, for another place. */
    public PantryItem prepared(Preparation other, Place where) {
        return with(other, onHandGrams, mustUseGrams, atMostGrams, wholePacksOnly, outOfStock, where);
    }

    /** The same food for another place. */
    public PantryItem withPlace(Place where) {
        return prepared(preparation, where);
    }

    /** The same food with so much of it in the house. */
    public PantryItem withOnHand(double grams) {
        return with(preparation, grams, mustUseGrams, atMostGrams, wholePacksOnly, outOfStock, place);
    }

    /** The same food, of which at least so much goes into the pot. */
    public PantryItem withMustUse(double grams) {
        return with(preparation, onHandGrams, grams, atMostGrams, wholePacksOnly, outOfStock, place);
    }

    /** The same food, of which at most so much is used; null for no such wish. */
    public PantryItem withAtMost(@Nullable Double grams) {
        return with(preparation, onHandGrams, mustUseGrams, grams, wholePacksOnly, outOfStock, place);
    }

    /** The same food, of which a part of a pack may be left. */
    public PantryItem withOpenPacks() {
        return with(preparation, onHandGrams, mustUseGrams, atMostGrams, false, outOfStock, place);
    }

    /** The same food, none of it in the house, sold by weight at the price that a gram of its pack has. */
    public PantryItem byWeight() {
        return byWeight(1);
    }

    /** The same at a share of its price by weight. */
    public PantryItem byWeight(double shareOfPrice) {
        return new PantryItem(
                food,
                preparation,
                null,
                null,
                packName,
                shareOfPrice * pricePerGram(),
                0,
                mustUseGrams,
                atMostGrams,
                false,
                outOfStock,
                place);
    }

    /** The same food, in packs that hold and cost so much of what they do. */
    public PantryItem partOf(double share) {
        Double pack = packGrams;
        Double asBought = packAsBoughtGrams;
        return pack == null || asBought == null
                ? this
                : new PantryItem(
                        food,
                        preparation,
                        pack * share,
                        asBought * share,
                        packName,
                        packPrice * share,
                        onHandGrams,
                        mustUseGrams,
                        atMostGrams,
                        wholePacksOnly,
                        outOfStock,
                        place);
    }

    /** The same food, which the shop has. */
    public PantryItem inStock() {
        return with(preparation, onHandGrams, mustUseGrams, atMostGrams, wholePacksOnly, false, place);
    }

    private PantryItem with(
            Preparation how,
            double onHand,
            double mustUse,
            @Nullable Double atMost,
            boolean wholePacks,
            boolean out,
            Place where) {
        return new PantryItem(
                food,
                how,
                packGrams,
                packAsBoughtGrams,
                packName,
                packPrice,
                onHand,
                mustUse,
                atMost,
                wholePacks,
                out,
                where);
    }
}
