package packpot.household;

/** Pantry items for tests. */
public final class TestItems {

    private TestItems() {}

    /** The same food at another price of a pack, or of a gram where it is sold by weight. */
    public static PantryItem priced(PantryItem item, double price) {
        return new PantryItem(
                item.food(),
                item.preparation(),
                item.packGrams(),
                item.packAsBoughtGrams(),
                item.packName(),
                price,
                item.onHandGrams(),
                item.mustUseGrams(),
                item.atMostGrams(),
                item.wholePacksOnly(),
                item.outOfStock(),
                item.place());
    }
}
