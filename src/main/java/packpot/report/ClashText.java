package packpot.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import packpot.explain.Clash;
import packpot.household.Wish;
import packpot.units.Show;

/** One clash, for people and for programs; every report that has no plan to show but a clash shows it alike. */
final class ClashText {
    /** Of the energy that is needed, what is as good as none. */
    private static final double NOTHING = 0.005;

    private ClashText() {}

    /** What kind of clash its wishes are, as the end of a sentence that they follow. */
    static String words(Clash clash) {
        String whatever = nothingCanBeFed(clash) ? ", whatever is fed of these foods" : "";
        return shown(clash).size() == 1
                ? "this cannot be had" + (whatever.isEmpty() ? " at all with these foods:" : whatever + ":")
                : "these cannot all be had together" + whatever
                        + (clash.irreducible() ? "; without any one of them the others can:" : ":");
    }

    /** The wishes in words, without the figures that can be reached. */
    static List<String> wishes(Clash clash) {
        return shown(clash).stream().map(ClashText::sentence).toList();
    }

    /** The wishes with their figures, each on lines of its own. */
    static String items(Clash clash, String indent) {
        return items(clash, part -> true, indent);
    }

    /** Some of the wishes. */
    static String items(Clash clash, Predicate<Clash.Part> which, String indent) {
        StringBuilder text = new StringBuilder();
        shown(clash).stream()
                .filter(which)
                .forEach(part -> text.append(Wrap.item(
                        sentence(part) + (part.figures().isEmpty() ? "" : " - " + part.figures()) + safety(part),
                        indent,
                        TextReport.WIDTH)));
        return text.toString();
    }

    /** The figure beside a limit that protects the dog is no advice to go there. */
    private static String safety(Clash.Part part) {
        boolean protects = part.wish().kind() == Wish.Kind.NUTRIENT_MAXIMUM
                || (part.wish().kind() == Wish.Kind.FOOD_LIMIT
                        && !part.wish().who().isEmpty());
        return protects ? "; it is for safety and never loosened" : "";
    }

    /** What the household wishes itself comes first, and that the dogs are to be fed last. */
    private static List<Clash.Part> shown(Clash clash) {
        boolean nothing = nothingCanBeFed(clash);
        return clash.parts().stream()
                .filter(part -> !nothing || part.wish().kind() != Wish.Kind.ENERGY)
                .sorted(Comparator.comparingInt(ClashText::rank))
                .toList();
    }

    private static int rank(Clash.Part part) {
        return switch (part.wish().kind()) {
            case POT, BIN, BAGS, FREEZER, BUDGET, STOCK, MUST_USE, AVOID, INGREDIENTS -> 0;
            case NUTRIENT_MINIMUM, NUTRIENT_MAXIMUM, RATIO -> 1;
            // A limit in grams is the household's own, one by share comes with the food or with the shape of the pot.
            case FOOD_LIMIT -> part.unit().equals("g") ? 0 : 2;
            case SHAPE, ADDITIONS, RECIPE -> 2;
            case ENERGY -> 3;
        };
    }

    /** Where not the least amount of food keeps the other wishes, the dogs' energy has no figure that tells anything. */
    private static boolean nothingCanBeFed(Clash clash) {
        return clash.parts().size() > 1
                && clash.parts().stream().anyMatch(part -> {
                    Double asked = part.asked();
                    Double reached = part.reached();
                    return part.wish().kind() == Wish.Kind.ENERGY
                            && asked != null
                            && reached != null
                            && reached < NOTHING * asked;
                });
    }

    private static String sentence(Clash.Part part) {
        Double asked = part.asked();
        boolean together =
                part.wish().kind() == Wish.Kind.ENERGY && part.wish().who().isEmpty();
        return together && asked != null
                ? "all dogs get their energy from the batch, together " + Show.number(asked) + " " + part.unit()
                : part.wish().sentence();
    }

    /** A list of the clash, or an empty one where none was proved in time. */
    static List<Map<String, Object>> data(@Nullable Clash clash) {
        if (clash == null) {
            return List.of();
        }
        List<Map<String, Object>> wishes = new ArrayList<>();
        for (Clash.Part part : clash.parts()) {
            Map<String, Object> wish = new LinkedHashMap<>();
            wish.put("wish", part.wish().sentence());
            wish.put("kind", part.wish().kind().name());
            wish.put("dog", part.wish().who().isEmpty() ? null : part.wish().who());
            wish.put("about", part.wish().what());
            wish.put("atLeast", part.atLeast());
            wish.put("asked", part.asked());
            wish.put("reached", part.reached());
            wish.put("unit", part.unit().isEmpty() ? null : part.unit());
            wishes.add(wish);
        }
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("irreducible", clash.irreducible());
        data.put("wishes", wishes);
        return List.of(data);
    }
}
