package packpot;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import packpot.solver.LinearModel;
import packpot.solver.MpsWriter;
import packpot.solver.Solution.Status;

/** A native solver of another house, GLPK's glpsol, which gets our models as the MPS text that people get. */
final class Glpsol {
    /** The line of its report that says what it has and what nothing can be below. */
    private static final Pattern PROGRESS =
            Pattern.compile("^\\+ *\\d+: (?:mip =|>>>>>) +(\\S+|not found yet) >= +(\\S+)", Pattern.MULTILINE);

    /** The line of the solution file: rows, columns, one letter or two for the status, the cost. */
    private static final Pattern FOUND =
            Pattern.compile("^s (?:mip|bas) \\d+ \\d+ (?<status>\\w(?: \\w)?) (?<cost>\\S+)$", Pattern.MULTILINE);

    private final Path program;

    /**
     * What it found.
     *
     * @param cost of its solution; not a number without one
     * @param bound no solution costs less, by what it says
     * @param seconds of the whole process
     */
    record Answer(Status status, double cost, double bound, double seconds) {
        boolean hasSolution() {
            return status == Status.OPTIMAL || status == Status.FEASIBLE;
        }
    }

    private Glpsol(Path program) {
        this.program = program;
    }

    /** The program that PACKPOT_GLPSOL names, or the one in its usual place; null where there is none. */
    static @Nullable Glpsol find() {
        String named = System.getenv("PACKPOT_GLPSOL");
        Path program = Path.of(named == null ? "/usr/bin/glpsol" : named);
        if (named != null && !Files.isExecutable(program)) {
            throw new AssertionError("PACKPOT_GLPSOL names " + named + ", which is no program");
        }
        return Files.isExecutable(program) ? new Glpsol(program) : null;
    }

    static void write(LinearModel<?> model, String name, Path file) {
        try {
            Files.createDirectories(file.getParent());
            Files.writeString(file, MpsWriter.write(model, name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Seconds until it has started, read the model and ended. */
    double startUp(Path mps) {
        long begun = System.nanoTime();
        String report = run(mps, List.of("--check"));
        if (!report.contains("non-zeros")) {
            throw new AssertionError("glpsol did not read " + mps + ": " + report);
        }
        return (System.nanoTime() - begun) / 1e9;
    }

    /** The optimum with fractions where whole numbers are asked for. */
    Answer relaxation(Path mps) {
        return solve(mps, List.of("--nomip"));
    }

    Answer solve(Path mps, double gap, int seconds) {
        return solve(mps, List.of("--mipgap", Double.toString(gap), "--tmlim", Integer.toString(seconds)));
    }

    private Answer solve(Path mps, List<String> options) {
        try {
            Path file = Files.createTempFile("packpot", ".sol");
            List<String> all = new ArrayList<>(options);
            all.addAll(List.of("-w", file.toString()));
            long begun = System.nanoTime();
            String report = run(mps, all);
            double seconds = (System.nanoTime() - begun) / 1e9;
            String solution = Files.readString(file);
            Files.delete(file);
            return answer(report, solution, seconds);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Answer answer(String report, String solution, double seconds) {
        Matcher found = FOUND.matcher(solution);
        if (report.contains("HAS NO PRIMAL FEASIBLE SOLUTION")
                || report.contains("HAS NO FEASIBLE SOLUTION")
                || report.contains("HAS NO INTEGER FEASIBLE SOLUTION")) {
            return new Answer(Status.INFEASIBLE, Double.NaN, Double.POSITIVE_INFINITY, seconds);
        }
        if (!found.find()) {
            return new Answer(Status.UNKNOWN, Double.NaN, bound(report), seconds);
        }
        double cost = Double.parseDouble(found.group("cost"));
        return switch (found.group("status")) {
            case "o", "f f" -> new Answer(Status.OPTIMAL, cost, cost, seconds);
            case "f" -> {
                boolean within = report.contains("GAP TOLERANCE REACHED");
                yield new Answer(within ? Status.OPTIMAL : Status.FEASIBLE, cost, bound(report), seconds);
            }
            default -> new Answer(Status.UNKNOWN, Double.NaN, bound(report), seconds);
        };
    }

    /** The bound of the last line that has one. */
    private static double bound(String report) {
        double bound = Double.NEGATIVE_INFINITY;
        for (Matcher line = PROGRESS.matcher(report); line.find(); ) {
            bound = line.group(2).startsWith("-inf") ? bound : number(line.group(2), bound);
        }
        return bound;
    }

    private static double number(String word, double otherwise) {
        try {
            return Double.parseDouble(word);
        } catch (NumberFormatException e) {
            return otherwise;
        }
    }

    private String run(Path mps, List<String> options) {
        List<String> command = new ArrayList<>(List.of(program.toString(), "--freemps", mps.toString()));
        command.addAll(options);
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String report = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            process.waitFor();
            return report;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
