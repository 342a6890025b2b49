package packpot.household;

import org.jspecify.annotations.Nullable;
import packpot.food.Food;
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

    /** Money per edible gram. */
    public double pricePerGram() {
        Double pack = packGrams;
        return pack == null ? packPrice : packPrice / pack;
    }

    /** The same food, which need not and may be used in any amount. */
    public PantryItem withoutWishes() {
        return new PantryItem(
                food,
                preparation,
                packGrams,
                packAsBoughtGrams,
                packName,
                packPrice,
                onHandGrams,
                0,
                null,
                false,
                outOfStock,
                place);
    }

    /** The same food cooked another way, for another place. */
    public PantryItem prepared(Preparation other, Place where) {
        return new PantryItem(
                food,
                other,
                packGrams,
                packAsBoughtGrams,
                packName,
                packPrice,
                onHandGrams,
                mustUseGrams,
                atMostGrams,
                wholePacksOnly,
                outOfStock,
                where);
    }

    /** The same food with so much of it in the house. */
    public PantryItem withOnHand(double grams) {
        return new PantryItem(
                food,
                preparation,
                packGrams,
                packAsBoughtGrams,
                packName,
                packPrice,
                grams,
                mustUseGrams,
                atMostGrams,
                wholePacksOnly,
                outOfStock,
                place);
    }
}
