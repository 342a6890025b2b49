package packpot.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.explain.Shortfall;
import packpot.units.Show;

/** What is said when there is no plan. */
public final class NoPlanReport {

    private NoPlanReport() {}

    /** For people. */
    public static String text(String household, List<Shortfall.Miss> misses) {
        StringBuilder text = new StringBuilder(
                Wrap.paragraph("There is no plan for " + household + " that meets every wish.", "", TextReport.WIDTH));
        if (!misses.isEmpty()) {
            text.append("The nearest one misses these; loosen them, or add a food that brings what is\nshort:\n");
            misses.forEach(miss -> text.append(Wrap.item(
                    miss.wish().sentence()
                            + String.format(Locale.ROOT, ", missed by %s %%", Show.number(100 * miss.share())),
                    "  ",
                    TextReport.WIDTH)));
        }
        return text.toString();
    }

    /** For programs. */
    public static String json(String household, List<Shortfall.Miss> misses) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotPlan", JsonReport.FORMAT);
        root.put("household", household);
        root.put("plan", null);
        root.put(
                "nearestPlanMisses",
                misses.stream()
                        .map(miss -> Map.of(
                                "wish", miss.wish().sentence(),
                                "kind", miss.wish().kind().name(),
                                "missedByShare", miss.share()))
                        .toList());
        return JsonReport.of(root);
    }
}
