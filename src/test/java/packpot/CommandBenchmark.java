package packpot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import packpot.solver.LinearModel;
import packpot.solver.OrToolsSolver;
import packpot.solver.SolveLimits;

/**
 * Whole commands from their start to their end, side by side in one run: the launcher that the build made, a floor that every
 * Java program with the solver library has, and another solver on the same model. No part of the ordinary tests: {@code mvn -q
 * -DskipTests package && mvn -q test -Dtest=CommandBenchmark} prints the table of DEVELOPERS.md.
 */
class CommandBenchmark {
    private static final Path LAUNCHER = Path.of("target", "packpot");
    private static final int TURNS = 9;
    private static final List<String> DEMOS = List.of("three-adults", "growing-puppy", "foster-home");

    /** Loads the solver library from where it lies and solves a model with nothing in it: what the floor is made of. */
    static final class Floor {
        private Floor() {}

        public static void main(String[] arguments) {
            LinearModel<String> model = new LinearModel<>();
            model.whole("nothing", 0, 1);
            new OrToolsSolver().solve(model, new SolveLimits(1, 0));
        }
    }

    @Test
    void table() throws IOException, InterruptedException {
        assertThat(LAUNCHER).as("mvn -q -DskipTests package makes it").isExecutable();
        System.out.println("| command | seconds in the median | quickest | slowest |");
        System.out.println("| --- | --- | --- | --- |");
        row(
                "a JVM that solves an empty model",
                "java",
                "-XX:SharedArchiveFile=target/packpot.jsa",
                "-Xlog:disable",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                Path.of("target", "packpot.jar")
                        + System.getProperty("path.separator")
                        + Path.of("target", "test-classes"),
                Floor.class.getName());
        row("packpot --version", LAUNCHER.toString(), "--version");
        row("packpot foods kelp", LAUNCHER.toString(), "foods", "kelp");
        for (String demo : DEMOS) {
            String scenario = Demo.file(demo).toString();
            row("packpot plan " + demo, LAUNCHER.toString(), "plan", scenario);
            Path mps = Path.of("target", demo + ".mps");
            run(LAUNCHER.toString(), "model", scenario, "--out", mps.toString(), "--overwrite");
            if (Glpsol.find() != null) {
                row(
                        "glpsol on its model, to 0.1 %, 20 s at most",
                        "glpsol", "--freemps", mps.toString(), "--mipgap", "0.001", "--tmlim", "20");
            }
        }
    }

    private static void row(String name, String... command) throws IOException, InterruptedException {
        double[] seconds = new double[TURNS];
        for (int i = 0; i < TURNS; i++) {
            seconds[i] = run(command);
        }
        Arrays.sort(seconds);
        System.out.printf(
                Locale.ROOT, "| %s | %.2f | %.2f | %.2f |%n", name, seconds[TURNS / 2], seconds[0], seconds[TURNS - 1]);
    }

    private static double run(String... command) throws IOException, InterruptedException {
        Path output = Files.createTempFile("packpot", ".out");
        long begun = System.nanoTime();
        int exit = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start()
                .waitFor();
        double seconds = (System.nanoTime() - begun) / 1e9;
        assertThat(exit).as(() -> String.join(" ", command)).isZero();
        Files.delete(output);
        return seconds;
    }
}
