package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import packpot.explain.Clash;

/** One clash, for people and for programs; every report that has none to show but a clash shows it alike. */
final class ClashText {

    private ClashText() {}

    /** What kind of clash its wishes are, as the end of a sentence that they follow. */
    static String words(Clash clash) {
        return clash.parts().size() == 1
                ? "this cannot be had at all with these foods:"
                : "these cannot all be had together"
                        + (clash.irreducible() ? "; without any one of them the others can:" : ":");
    }

    /** The wishes with their figures, each on lines of its own. */
    static String items(Clash clash, String indent) {
        return items(clash, part -> true, indent);
    }

    /** Some of the wishes. */
    static String items(Clash clash, Predicate<Clash.Part> which, String indent) {
        StringBuilder text = new StringBuilder();
        clash.parts().stream()
                .filter(which)
                .forEach(part -> text.append(Wrap.item(
                        part.wish().sentence() + (part.figures().isEmpty() ? "" : " - " + part.figures()),
                        indent,
                        TextReport.WIDTH)));
        return text.toString();
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
