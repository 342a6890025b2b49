package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import packpot.Demo;
import packpot.household.Change;
import packpot.household.Fault;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;

/**
 * Scenarios, recipes and changes that are wrong in every way that can be drawn: each is told in words, in time, and leaves
 * no half of a file. A failure names the file with its input. {@code -Dfuzz.seconds=600} runs longer, {@code
 * -Dfuzz.seed=7} draws the same again.
 */
class HostileInputTest {
    private static final double SECONDS = Double.parseDouble(System.getProperty("fuzz.seconds", "15"));
    /** A usual run draws the same each time; a long one is to find what is new. */
    private static final long SEED =
            Long.getLong("fuzz.seed", System.getProperty("fuzz.seconds") == null ? 1L : System.currentTimeMillis());
    /** Share of the time for whole commands, which plan. */
    private static final double COMMANDS = 0.3;

    private static final Duration LONGEST_READING = Duration.ofSeconds(5);
    private static final Duration LONGEST_COMMAND = Duration.ofSeconds(60);
    private static final Pattern OF_THE_PROGRAM =
            Pattern.compile("Exception|\\bat packpot|java\\.|\\bNaN\\b|Infinity|\\w@[0-9a-f]{6}|fault of the program");
    /** A machine that is busy with other work may give this process so little of the time. */
    private static final int BUSY = 5;

    private static final OperatingSystemMXBean SYSTEM =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    private static final Path FAILED = Path.of("target", "hostile-input");
    private static final List<String> WHATS = List.of(
            "out of stock",
            "in stock",
            "price +10 %",
            "price -10 %",
            "price $4.49/lb",
            "pack 5 lb",
            "on hand 2 lb",
            "must use 1 lb",
            "at most 2 lb",
            "comes, 30 lb, 3 years, high activity",
            "leaves",
            "weight 23 lb",
            "goal weight 20 lb",
            "age 5 months",
            "adult weight 60 lb",
            "activity high",
            "condition 6",
            "treats 50 kcal",
            "vet energy 600 kcal",
            "profile fediaf",
            "avoids beef",
            "in whelp week 5",
            "nursing week 2 with 5 puppies",
            "no longer nursing",
            "10",
            "no limit",
            "5 cu ft chest",
            "holds 20 l",
            "5 %",
            "2026-04-01",
            "comes from rook.json");
    private static final List<String> SUBJECTS = List.of(
            "days",
            "meals",
            "pot",
            "pot loads",
            "bin",
            "bag",
            "bags",
            "freezer",
            "fridge days",
            "start",
            "profile",
            "margin",
            "budget",
            "carrots",
            "all chicken",
            "canola oil",
            "Bramble",
            "Moss",
            "Pip",
            "Rook",
            "chocolate");

    private final AtomicReference<Thread> working = new AtomicReference<>(Thread.currentThread());
    private final ExecutorService worker = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "reader");
        thread.setDaemon(true);
        working.set(thread);
        return thread;
    });
    private final Random random = new Random(SEED);
    private final List<Path> scenarios = Stream.of(
                    "scenarios", "src/test/resources/why-not", "src/test/resources/sheets")
            .flatMap(folder -> Mutations.jsonFiles(Path.of(folder)).stream())
            .toList();
    private final List<Path> recipes = Mutations.jsonFiles(Path.of("scenarios", "recipes"));
    private final Mutations mutations = new Mutations(
            random, Stream.concat(scenarios.stream(), recipes.stream()).toList());
    private final ScenarioReader reader = new ScenarioReader(Demo.knowledge(), LocalDate.of(2026, 3, 7));

    @TempDir
    private Path folder;

    /** Reads or runs something; what it gives back is looked through for what only a program would say. */
    private interface Task {
        String run() throws Exception;
    }

    @Test
    void whateverIsReadIsReadOrRefusedInWords() throws Exception {
        int read = 0;
        int commands = 0;
        long began = System.nanoTime();
        double inCommands = 0;
        while (seconds(began) < SECONDS) {
            byte[] scenario = scenario();
            boolean good = reads(scenario);
            readings(scenario);
            read++;
            if (good && inCommands < COMMANDS * seconds(began)) {
                long commandBegan = System.nanoTime();
                command(scenario);
                commands++;
                inCommands += seconds(commandBegan);
            }
        }
        System.out.println("Seed " + SEED + ": " + read + " inputs read, " + commands + " commands run.");
        assertThat(read).isGreaterThan(commands);
        assertThat(commands).isPositive();
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    private byte[] scenario() {
        byte[] text = Mutations.bytes(mutations.one(scenarios));
        return random.nextInt(20) == 0 ? mutations.torn(text(text)) : mutations.changed(text);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private boolean reads(byte[] scenario) throws Exception {
        boolean[] good = {false};
        held("scenario", scenario, LONGEST_READING, () -> {
            reader.read("it.json", scenario);
            good[0] = true;
            return "";
        });
        return good[0];
    }

    /** The same text as everything else that it could be, and what goes with a scenario. */
    private void readings(byte[] scenario) throws Exception {
        held("energies", scenario, LONGEST_READING, () -> {
            reader.energies("it.json", scenario)
                    .forEach(dog -> dog.ifPresent(
                            it -> assertThat(it.need().kcalPerDay()).isFinite().isPositive()));
            return "";
        });
        held("weeks", scenario, LONGEST_READING, () -> {
            reader.readWithHorizon("it.json", scenario, random.nextBoolean() ? null : 10);
            return "";
        });
        Path recipe = folder.resolve("recipe.json");
        Files.write(recipe, mutations.changed(Mutations.bytes(mutations.one(recipes))));
        held("recipe", Files.readAllBytes(recipe), LONGEST_READING, () -> {
            reader.readWithRecipe(Path.of("scenarios", "three-adults.json"), recipe);
            return "";
        });
        List<String> words = changes();
        byte[] known = Mutations.bytes(Path.of("scenarios", "three-adults.json"));
        held("changes", String.join("\n", words).getBytes(StandardCharsets.UTF_8), LONGEST_READING, () -> {
            List<Change> changes = new ArrayList<>();
            for (String each : words) {
                changes.add(Change.of(each));
            }
            new ScenarioChanges(Demo.knowledge(), reader, "it.json", random.nextInt(4) == 0 ? scenario : known)
                    .with(changes, List.of());
            return "";
        });
    }

    private List<String> changes() {
        List<String> changes = new ArrayList<>();
        for (int n = random.nextInt(3); n >= 0; n--) {
            String change = mutations.one(SUBJECTS) + ": " + mutations.one(WHATS);
            changes.add(random.nextInt(3) == 0 ? change : mutations.text(change));
        }
        return changes;
    }

    /** A scenario that reads well, in a whole command with little time. */
    private void command(byte[] scenario) throws Exception {
        Path file = folder.resolve("scenario.json");
        Files.write(file, scenario);
        Path out = folder.resolve("out.json");
        String[] arguments = switch (random.nextInt(6)) {
            case 0 ->
                new String[] {
                    "check",
                    file.toString(),
                    "--recipe",
                    folder.resolve("recipe.json").toString()
                };
            case 1 -> new String[] {"what-if", file.toString(), "--change", mutations.one(changes())};
            case 2 -> new String[] {"calendar", file.toString()};
            case 3 -> new String[] {"targets", file.toString(), "--weeks", "12"};
            default -> new String[] {"plan", file.toString(), "--gap", "1"};
        };
        List<String> all = new ArrayList<>(List.of(arguments));
        if (!arguments[0].equals("targets")) {
            all.addAll(List.of("--time-limit", "1"));
        }
        boolean toFile = random.nextBoolean();
        all.addAll(toFile ? List.of("--json", "--out", out.toString()) : List.of());
        String[] told = {""};
        held("command", scenario, LONGEST_COMMAND, () -> {
            Run run = Run.of(all.toArray(String[]::new));
            told[0] = all + " gave " + run;
            assertThat(run.exitCode()).as(told[0]).isNotIn(ExitCode.FAULT_OF_PROGRAM, ExitCode.AUDIT_FAILED);
            if (run.exitCode() != ExitCode.DONE) {
                assertThat(run.err() + run.out() + (toFile && Files.exists(out) ? Files.readString(out) : ""))
                        .as(told[0])
                        .isNotBlank();
            }
            if (Files.exists(out)) {
                assertThat(Mutations.tree(Files.readAllBytes(out)).isObject())
                        .as(told[0])
                        .isTrue();
                Files.delete(out);
            }
            return run.err();
        });
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(each -> each.getFileName().toString())).containsOnly("scenario.json", "recipe.json");
        }
    }

    /** Does it in time, and lets nothing pass but an answer or a refusal in words. */
    private void held(String what, byte[] input, Duration longest, Task task) throws Exception {
        Future<String> answer = worker.submit(task::run);
        try {
            inWords(inTime(answer, longest));
        } catch (TimeoutException e) {
            throw new AssertionError(saved(what, input) + " took longer than " + longest + ", at", e);
        } catch (ExecutionException e) {
            if (!(e.getCause() instanceof ScenarioException refused)) {
                throw new AssertionError(saved(what, input) + " came to " + e.getCause(), e.getCause());
            }
            try {
                assertThat(refused.faults()).isNotEmpty();
                refused.faults().stream().map(Fault::message).forEach(HostileInputTest::inWords);
            } catch (AssertionError unclear) {
                throw new AssertionError(saved(what, input) + " is refused unclearly", unclear);
            }
        } catch (AssertionError unclear) {
            throw new AssertionError(saved(what, input) + " is answered unclearly", unclear);
        }
    }

    /**
     * Waits so long on an idle machine. On a busy one the time counts that this process had; when it is over, the fault
     * tells what the work was at.
     */
    private String inTime(Future<String> answer, Duration longest) throws Exception {
        long begunNanos = SYSTEM.getProcessCpuTime();
        for (int waited = 1; ; waited++) {
            try {
                return answer.get(longest.toMillis(), TimeUnit.MILLISECONDS);
            } catch (TimeoutException e) {
                long hadNanos = SYSTEM.getProcessCpuTime() - begunNanos;
                if (waited == BUSY || hadNanos >= longest.toNanos()) {
                    TimeoutException late =
                            new TimeoutException("processor time of " + hadNanos / 1_000_000 + " ms, " + e);
                    late.setStackTrace(working.get().getStackTrace());
                    throw late;
                }
            }
        }
    }

    private static void inWords(String told) {
        // What was read is quoted, and may be anything; so may the name of a file that a change asks for.
        String own = told.replaceAll(
                "(?s)\"(?:\\\\.|[^\"\\\\]++)*+\"|read .*?, expected|(?m:^[^\\n]* has (?:a fault|\\d+ faults):$)", "");
        assertThat(OF_THE_PROGRAM.matcher(own).find()).as(told).isFalse();
    }

    private static String saved(String what, byte[] input) throws IOException {
        Files.createDirectories(FAILED);
        Path file = FAILED.resolve(what + "-" + SEED + ".txt");
        Files.write(file, input);
        return "Seed " + SEED + ": the " + what + " in " + file;
    }
}
