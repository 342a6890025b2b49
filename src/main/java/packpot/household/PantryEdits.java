package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import packpot.food.Food;
import packpot.food.Measures;
import packpot.food.Place;
import packpot.food.Supplement;
import packpot.units.Write;

/** Edits of "pantry". */
final class PantryEdits {
    private static final String PANTRY = "/pantry";
    private static final int PRICE_DECIMALS = 4;
    private static final double SAME = 1e-9;

    private final TreeEditor tree;
    private final Knowledge knowledge;
    private final String currency;
    private final FoodFinder foods;

    PantryEdits(TreeEditor tree, Knowledge knowledge, String currency) {
        this.tree = tree;
        this.knowledge = knowledge;
        this.currency = currency;
        this.foods = new FoodFinder(knowledge, OwnFoodReader.read(new Fields(tree.tree(), "", new ArrayList<>())));
    }

    /** False when the change cannot be written. */
    boolean write(List<PantryItem> old, List<PantryItem> changed) {
        Map<String, PantryItem> before = new HashMap<>();
        old.forEach(item -> before.put(item.food().id(), item));
        boolean written = true;
        for (PantryItem item : changed) {
            PantryItem was = before.remove(item.food().id());
            written &= was == null ? add(item) : was.equals(item) || change(was, item);
        }
        return written && before.isEmpty();
    }

    private boolean change(PantryItem was, PantryItem item) {
        int index = index(item.food());
        boolean sold = was.packPrice() == item.packPrice()
                && Objects.equals(was.packGrams(), item.packGrams())
                && Objects.equals(was.packAsBoughtGrams(), item.packAsBoughtGrams());
        Optional<Buying> buying = buying(item);
        if (index < 0
                || was.onHandGrams() != item.onHandGrams()
                || !was.preparation().equals(item.preparation())
                || (!sold && buying.isEmpty())) {
            return false;
        }
        String path = PANTRY + "/" + index + "/";
        if (!sold) {
            tree.put(path + "price", buying.get().price());
            text(path + "pack", buying.get().pack());
        }
        flag(path + "outOfStock", was.outOfStock(), item.outOfStock());
        // Of what is sold in no packs yet, "wholePacks" may stand in the file and mean nothing.
        flag(path + "wholePacks", was.wholePacksOnly() || !sold, item.wholePacksOnly());
        Double atMost = item.atMostGrams();
        if (!Objects.equals(was.atMostGrams(), atMost)) {
            text(path + "atMost", atMost == null ? null : Write.grams(atMost, RoundingMode.CEILING));
        }
        if (was.mustUseGrams() != item.mustUseGrams()) {
            text(
                    path + "mustUse",
                    item.mustUseGrams() > 0 ? Write.grams(item.mustUseGrams(), RoundingMode.FLOOR) : null);
        }
        if (was.place() != item.place()) {
            tree.put(path + "where", word(item.place()));
        }
        return true;
    }

    private void text(String path, @Nullable String text) {
        if (text == null) {
            tree.remove(path);
        } else {
            tree.put(path, text);
        }
    }

    private void flag(String path, boolean was, boolean is) {
        if (is && !was) {
            tree.put(path, BooleanNode.TRUE);
        } else if (was && !is) {
            tree.remove(path);
        }
    }

    private boolean add(PantryItem item) {
        Optional<String> name = name(item.food());
        Optional<Buying> buying = buying(item);
        boolean plain = item.equals(item.withoutWishes().withOnHand(0).inStock())
                && item.preparation().equals(knowledge.preparations().usual(item.food()));
        if (name.isEmpty() || buying.isEmpty() || !plain) {
            return false;
        }
        ObjectNode entry = JsonNodeFactory.instance.objectNode().put("food", name.get());
        entry.put("price", buying.get().price());
        String pack = buying.get().pack();
        if (pack != null) {
            entry.put("pack", pack);
        }
        Supplement supplement = item.food().supplement();
        if (item.place() != (supplement == null ? Place.POT : supplement.place())) {
            entry.put("where", word(item.place()));
        }
        tree.append(PANTRY, entry);
        return true;
    }

    /** How a food is bought; no pack where it is sold by weight, or in the usual one that is taken for granted. */
    private record Buying(String price, @Nullable String pack) {}

    /** Prices are rounded in the household's favour. Empty where price and pack cannot be written. */
    private Optional<Buying> buying(PantryItem item) {
        double edible = item.food().kitchen().edibleShare();
        Double pack = item.packGrams();
        Double asBought = item.packAsBoughtGrams();
        if (pack == null || asBought == null) {
            double perKilogram = item.packPrice() * 1000 * edible;
            return Optional.of(new Buying(price(perKilogram) + "/kg", null));
        }
        String price = price(item.packPrice());
        Measures.Pack usual = knowledge.measures().usualPack(item.food());
        if (usual != null && usual.edibleGrams() == pack && usual.gramsAsBought() == asBought) {
            return Optional.of(new Buying(price, null));
        }
        return Math.abs(asBought * edible - pack) <= SAME * pack
                ? Optional.of(new Buying(price, Write.grams(asBought, RoundingMode.CEILING)))
                : Optional.empty();
    }

    private String price(double amount) {
        return Write.price(amount, PRICE_DECIMALS, currency, RoundingMode.FLOOR);
    }

    private static String word(Place place) {
        return place.name().toLowerCase(Locale.ROOT);
    }

    /** Where a food stands in the file, whatever name of it the file has. */
    private int index(Food food) {
        int index = 0;
        for (JsonNode entry : tree.tree().path("pantry")) {
            if (isCalled(food, entry.path("food").asText())) {
                return index;
            }
            index++;
        }
        return -1;
    }

    private boolean isCalled(Food food, String name) {
        Food named = foods.known(name);
        return named != null && named.id().equals(food.id());
    }

    /** A name by which the scenario finds a food: the household's own foods go before those of the catalogue. */
    private Optional<String> name(Food food) {
        return Stream.of(food.label(), food.name(), food.id())
                .filter(name -> isCalled(food, name) && name.length() <= Fields.MOST_CHARACTERS)
                .findFirst();
    }
}
