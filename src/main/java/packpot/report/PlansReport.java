package packpot.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import packpot.audit.Verdict;
import packpot.explain.Clash;
import packpot.household.Fault;
import packpot.plan.Plan;
import packpot.units.Show;

/** Plans of many scenario files, a line each: for people in 80 columns, or for programs in JSON Lines. */
public final class PlansReport {
    private static final int MOST_FILE_COLUMNS = 28;
    private static final int FIGURE_COLUMNS = 9;
    private static final String GAP = "  ";
    private static final String CUT = "…";

    private final boolean json;
    private final int fileColumns;

    /** Why a file has neither a plan nor a proof that there is none. */
    public enum Failure {
        SCENARIO_FAULTS,
        NO_PLAN_IN_TIME,
        FAULT_OF_PROGRAM
    }

    /**
     * A report.
     *
     * @param files all that will be told of, for the width of their column
     * @param json whether it is for programs
     */
    public PlansReport(List<String> files, boolean json) {
        this.json = json;
        int widest = files.stream()
                .mapToInt(file -> Columns.of(Fault.visible(file)))
                .max()
                .orElse(0);
        fileColumns = Math.min(MOST_FILE_COLUMNS, Math.max("file".length(), widest));
    }

    /** What stands above the lines; nothing for programs. */
    public String head() {
        return json ? "" : line("file", "household", "a day", "proved to");
    }

    /** A plan, whether the audit passed it or not. */
    public String planned(String file, Plan plan, Verdict verdict) {
        if (json) {
            return of(file, JsonReport.data(plan, verdict));
        }
        if (!verdict.passed()) {
            return line(file, "FAILED THE CHECK: " + verdict.findings().get(0));
        }
        return line(
                file,
                plan.household(),
                Show.money(plan.cost().perDay(), plan.currency()),
                String.format(Locale.ROOT, "%.2f %%", 100 * plan.proof().gapShare()));
    }

    /**
     * That there is no plan.
     *
     * @param clash what stands in the way; null where that was not found in time
     */
    public String noPlan(String file, String household, @Nullable Clash clash) {
        return json
                ? of(file, WhyNotReport.briefData(household, clash))
                : line(
                        file,
                        clash == null
                                ? "no plan meets every wish"
                                : "no plan: " + String.join("; ", ClashText.wishes(clash)));
    }

    /** That a file came to nothing, and why. */
    public String failed(String file, Failure failure, List<Fault> faults) {
        if (!json) {
            String number = failure == Failure.SCENARIO_FAULTS && faults.size() > 1 ? faults.size() + " faults; " : "";
            return line(file, number + faults.get(0));
        }
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("packpotPlan", JsonReport.FORMAT);
        data.put("failure", failure.name());
        data.put("faults", faults);
        return of(file, data);
    }

    private static String of(String file, Map<String, Object> data) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("file", file);
        root.putAll(data);
        return JsonReport.line(root);
    }

    private String line(String file, String household, String cost, String gap) {
        String start = file(file);
        String end = GAP + right(cost) + GAP + right(gap);
        int room = TextReport.WIDTH - Columns.of(start) - Columns.of(end);
        String shown = cut(household, room);
        return start + shown + " ".repeat(room - Columns.of(shown)) + end + "\n";
    }

    private String line(String file, String whatIsWrong) {
        String start = file(file);
        return start + cut(whatIsWrong.replaceAll("\\s+", " "), TextReport.WIDTH - Columns.of(start)) + "\n";
    }

    /** Of a long name the end is shown, by which files of one folder differ. */
    private String file(String name) {
        String shown = Fault.visible(name);
        if (Columns.of(shown) > fileColumns) {
            while (Columns.of(shown) >= fileColumns) {
                shown = shown.substring(shown.offsetByCodePoints(0, 1));
            }
            shown = CUT + shown;
        }
        return shown + " ".repeat(fileColumns - Columns.of(shown)) + GAP;
    }

    private static String right(String figure) {
        return " ".repeat(Math.max(0, FIGURE_COLUMNS - Columns.of(figure))) + figure;
    }

    private static String cut(String text, int columns) {
        return Columns.of(text) <= columns
                ? text
                : text.substring(0, Columns.end(text, columns - 1)).stripTrailing() + CUT;
    }
}
