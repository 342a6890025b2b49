package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.GeneratedScenarios;
import packpot.report.PlansReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;

/**
 * A thousand households drawn at random, planned in one process as {@code packpot plan} with many files does: how many a
 * second, and that memory does not grow. No part of the ordinary tests: {@code mvn -q test -Dtest=ManyHouseholdsBenchmark}.
 */
class ManyHouseholdsBenchmark {
    private static final int HOUSEHOLDS = Integer.getInteger("households", 1000);
    private static final int PARTS = 4;
    private static final SolveLimits LIMITS = new SolveLimits(2, 0.001);
    /** What caches and counters of the Java machine may come to. */
    private static final double ROOM_MEGABYTES = 4;

    private static final OperatingSystemMXBean SYSTEM =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private final Tally tally = new Tally();

    @Test
    void aThousandHouseholds() throws OutputException, IOException {
        List<Path> files = IntStream.rangeClosed(1, HOUSEHOLDS)
                .mapToObj(GeneratedScenarios::file)
                .toList();
        PlansReport report = new PlansReport(files.stream().map(Path::toString).toList(), true);
        ManyPlans plans = new ManyPlans(Demo.knowledge(), new Search(), LIMITS, LIMITS.seconds(), report);
        System.out.println(
                "| households | seconds | processor seconds | ran into the limit | heap, MB | whole process, MB |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        double[] heap = new double[PARTS];
        double seconds = 0;
        double processorSeconds = 0;
        for (int part = 0; part < PARTS; part++) {
            long begun = System.nanoTime();
            long processorBegun = SYSTEM.getProcessCpuTime();
            int end = (part + 1) * HOUSEHOLDS / PARTS;
            plans.plan(files.subList(part * HOUSEHOLDS / PARTS, end), tally::add);
            seconds += (System.nanoTime() - begun) / 1e9;
            processorSeconds += (SYSTEM.getProcessCpuTime() - processorBegun) / 1e9;
            heap[part] = heapMegabytes();
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %.0f | %.0f | %d | %.1f | %s |%n",
                    end,
                    seconds,
                    processorSeconds,
                    outOfTime(),
                    heap[part],
                    processMegabytes());
        }
        int cores = Runtime.getRuntime().availableProcessors();
        System.out.printf(
                Locale.ROOT,
                "%.2f households a second on %d cores, %.2f a second and core, %.2f a second of the processor%n%s;"
                        + " %d ran into the %.0f s%n",
                HOUSEHOLDS / seconds,
                cores,
                HOUSEHOLDS / seconds / cores,
                HOUSEHOLDS / processorSeconds,
                tally.words(),
                outOfTime(),
                LIMITS.seconds());
        assertThat(tally.exitCode()).isIn(ExitCode.DONE, ExitCode.NO_PLAN, ExitCode.NO_PLAN_IN_TIME);
        double before = Arrays.stream(heap, 0, PARTS - 1).max().orElseThrow();
        assertThat(heap[PARTS - 1]).isLessThan(before + ROOM_MEGABYTES);
    }

    private int outOfTime() {
        return tally.notProved() + tally.files(ExitCode.NO_PLAN_IN_TIME);
    }

    /** What is in use once all that nobody holds is gone. */
    private static double heapMegabytes() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1e6;
    }

    /** With the solver library's own memory; where the system tells. */
    private static String processMegabytes() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.exists(status)) {
            return "not known";
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .map(line -> String.valueOf(Long.parseLong(line.replaceAll("\\D", "")) / 1000))
                .findFirst()
                .orElse("not known");
    }
}
