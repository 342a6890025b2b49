package packpot.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How many of many files came to what. */
final class Tally {
    /** What each exit code means for a file, the worst code first. */
    private static final Map<Integer, String> WORST_FIRST = new LinkedHashMap<>();

    static {
        WORST_FIRST.put(ExitCode.FAULT_OF_PROGRAM, "stopped by a fault of the program");
        WORST_FIRST.put(ExitCode.AUDIT_FAILED, "FAILED THE CHECK");
        WORST_FIRST.put(ExitCode.SCENARIO_FAULTS, "with faults");
        WORST_FIRST.put(ExitCode.NO_PLAN_IN_TIME, "not planned in the time given");
        WORST_FIRST.put(ExitCode.NO_PLAN, "without a plan");
        WORST_FIRST.put(ExitCode.DONE, "planned");
    }

    private final Map<Integer, Integer> filesByCode = new HashMap<>();
    private int notProved;

    void add(ManyPlans.Answer answer) {
        filesByCode.merge(answer.exitCode(), 1, Integer::sum);
        if (answer.exitCode() == ExitCode.DONE && !answer.proved()) {
            notProved++;
        }
    }

    /** The exit code of the worst file. */
    int exitCode() {
        return WORST_FIRST.keySet().stream()
                .filter(filesByCode::containsKey)
                .findFirst()
                .orElse(ExitCode.DONE);
    }

    int files(int exitCode) {
        return filesByCode.getOrDefault(exitCode, 0);
    }

    /** How many are planned, but not proved as sharply as was wished. */
    int notProved() {
        return notProved;
    }

    /** The numbers in a line, from good to bad. */
    String words() {
        List<String> parts = new ArrayList<>();
        WORST_FIRST.forEach((code, meaning) -> {
            if (filesByCode.containsKey(code) || code == ExitCode.DONE) {
                String note =
                        code == ExitCode.DONE && notProved > 0 ? " (" + notProved + " not to the wished gap)" : "";
                parts.add(0, files(code) + " " + meaning + note);
            }
        });
        return filesByCode.values().stream().mapToInt(Integer::intValue).sum() + " scenarios: "
                + String.join(", ", parts);
    }
}
