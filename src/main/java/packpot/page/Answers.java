package packpot.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import packpot.audit.Finding;
import packpot.audit.RecipeAudit;
import packpot.audit.RecipeVerdict;
import packpot.explain.MendEdits;
import packpot.explain.PlanComparison;
import packpot.explain.Planner;
import packpot.explain.RecipeMend;
import packpot.explain.RecipeMender;
import packpot.explain.WhyNot;
import packpot.horizon.HorizonCalendar;
import packpot.horizon.HorizonPlan;
import packpot.horizon.Sessions;
import packpot.household.EditableScenario;
import packpot.household.Fault;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.RecipeScenario;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.plan.Plan;
import packpot.solver.SolveLimits;
import packpot.units.Show;

/** What the page asks, answered as the command line answers it: with the same limits, so with the same plans. */
final class Answers {
    private static final SolveLimits PLAN = new SolveLimits(20, 0.001);
    private static final SolveLimits RECIPE = new SolveLimits(20, 0.005);
    private static final SolveLimits WEEKS = new SolveLimits(60, 0.01);
    private static final double CLASH_SECONDS = 10;
    private static final double WHY_SECONDS = 30;
    private static final double MOVED_SHARE = 0.2;
    private static final double BAND_SHARE = 0.25;

    private final Knowledge knowledge;
    private final Fragments fragments;
    private final Plans plans = new Plans();

    Answers(Knowledge knowledge) {
        this.knowledge = knowledge;
        this.fragments = new Fragments(knowledge);
    }

    private ScenarioReader reader() {
        return new ScenarioReader(knowledge, LocalDate.now(ZoneId.systemDefault()));
    }

    /** A plan that is made before anybody asks. */
    private record Ahead(String hash, Future<?> made) {}

    private volatile @Nullable Ahead ahead;

    /** Begins to plan what a page is about to ask for; what is wrong with it is told to the page. */
    void planAhead(String name, String scenario, Work.Job job, ExecutorService threads) {
        String hash = ScenarioFolder.hash(bytes(scenario));
        ahead = new Ahead(hash, threads.submit(() -> {
            try {
                return planned(hash, reader().read(name, bytes(scenario)), job);
            } catch (ScenarioException toldToThePage) {
                return hash;
            }
        }));
    }

    /** Waits for a plan that is being made already. */
    private void awaitAhead(String hash) {
        Ahead made = ahead;
        if (made != null && made.hash().equals(hash)) {
            try {
                made.made().get();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } catch (ExecutionException e) {
                // It is made anew, and fails again where that can be told.
            }
        }
    }

    /** Where the lines of an answer go. */
    interface Lines {
        void line(Object value) throws IOException;
    }

    /** The energy of each dog at once, then the plan and what it changes, or why there is none. */
    void plan(Question question, Work.Job job, Lines lines) throws IOException, Refused {
        Household household;
        try {
            lines.line(Map.of("dogs", energies(question)));
            household = reader().read(question.name(), bytes(question.scenario()));
        } catch (ScenarioException e) {
            lines.line(Map.of("faults", faults(e)));
            return;
        }
        job.now("Planning");
        String hash = ScenarioFolder.hash(bytes(question.scenario()));
        awaitAhead(hash);
        if (plans.of(hash).isEmpty()) {
            // What a person changes leaves most of the foods in the pot; a plan with these is there long before the
            // best is.
            Optional<Planner.Result.Planned> first =
                    plans.last().flatMap(similar -> new Planner(knowledge, job.solver()).atOnce(similar, household));
            if (first.isPresent()) {
                lines.line(shown(question, first.get(), hash, true, job));
            }
        }
        Planner.Result result = planned(hash, household, job);
        if (result instanceof Planner.Result.NoPlan none) {
            noPlan(none, job, lines);
            return;
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        lines.line(
                planned.verdict().passed()
                        ? shown(question, planned, hash, false, job)
                        : Map.of("failed", findings(planned.verdict().findings())));
    }

    private Map<String, Object> shown(
            Question question, Planner.Result.Planned planned, String hash, boolean first, Work.Job job)
            throws Refused {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("plan", hash);
        line.put("first", first);
        line.put(
                "summary",
                Fragments.wording(planned.household())
                                .money(planned.plan().cost().perDay()) + " a day");
        line.put("html", fragments.plan(planned, first));
        line.put("compared", compared(question, planned, job));
        return line;
    }

    private Planner.Result planned(String hash, Household household, Work.Job job) {
        Optional<Planner.Searched> known = plans.of(hash);
        if (known.isPresent()) {
            return known.get().result();
        }
        Planner.Searched searched = new Planner(knowledge, job.solver()).search(household, PLAN);
        if (searched.result() instanceof Planner.Result.Planned planned
                && planned.verdict().passed()) {
            plans.put(hash, searched);
        }
        return searched.result();
    }

    private void noPlan(Planner.Result.NoPlan none, Work.Job job, Lines lines) throws IOException {
        if (!none.provedImpossible()) {
            lines.line(Map.of("failed", List.of("No plan was found within " + (int) PLAN.seconds() + " seconds.")));
            return;
        }
        lines.line(Map.of("none", fragments.none(none.household(), null)));
        job.now("There is no plan; looking for what clashes");
        lines.line(Map.of(
                "none",
                fragments.none(
                        none.household(),
                        new WhyNot(knowledge, job.solver())
                                .firstClash(none.household(), CLASH_SECONDS)
                                .orElse(null))));
    }

    /** The kept plan beside the new one; empty where there is none to keep, or it is the same. */
    private String compared(Question question, Planner.Result.Planned planned, Work.Job job) {
        String kept = question.kept();
        if (kept == null || kept.equals(question.scenario())) {
            return "";
        }
        try {
            Household household = reader().read(question.name(), bytes(kept));
            Planner.Result before = planned(ScenarioFolder.hash(bytes(kept)), household, job);
            // A change of what is no part of a plan, such as a recipe to check, leaves nothing to compare.
            return before instanceof Planner.Result.Planned old
                            && old.verdict().passed()
                            && !isSame(old.plan(), planned.plan())
                    ? fragments.compared(PlanComparison.of(old, planned, true, MOVED_SHARE), planned.household())
                    : "";
        } catch (ScenarioException keptHasFaults) {
            return "";
        }
    }

    private static boolean isSame(Plan one, Plan other) {
        return one.pot().equals(other.pot())
                && one.shopping().equals(other.shopping())
                && one.dogs().equals(other.dogs());
    }

    /** Why there is no plan and what would mend it, each mend with the edits that make it. */
    void why(Question question, Work.Job job, Lines lines) throws IOException {
        EditableScenario scenario;
        try {
            scenario = new ScenarioChanges(knowledge, reader(), question.name(), bytes(question.scenario()))
                    .scenario(List.of(), List.of());
        } catch (ScenarioException e) {
            lines.line(Map.of("faults", faults(e)));
            return;
        }
        WhyNot.Answer answer = new WhyNot(knowledge, job.solver()).explain(scenario.household(), WHY_SECONDS, job::now);
        if (answer instanceof WhyNot.Answer.NoPlan none) {
            MendEdits edits = new MendEdits(knowledge, reader(), scenario);
            lines.line(Map.of("html", fragments.why(none), "edits", Mends.edits(none, edits)));
        } else {
            lines.line(Map.of(
                    "failed",
                    List.of(
                            answer instanceof WhyNot.Answer.HasPlan
                                    ? "There is a plan after all."
                                    : "Neither a plan nor a reason was found in " + (int) WHY_SECONDS + " seconds.")));
        }
    }

    /** The recipe checked, and then mended. */
    void recipe(Question question, Work.Job job, Lines lines) throws IOException {
        RecipeScenario scenario;
        try {
            scenario = reader().readWithRecipe(question.name(), bytes(question.scenario()));
        } catch (ScenarioException e) {
            lines.line(Map.of("faults", faults(e)));
            return;
        }
        RecipeVerdict verdict = RecipeAudit.check(scenario.recipe(), scenario.household(), knowledge);
        lines.line(Map.of("html", fragments.recipe(scenario, verdict, List.of())));
        job.now("Mending the recipe in three ways");
        List<RecipeMend> mends = new RecipeMender(knowledge, job.solver(), BAND_SHARE).all(scenario, RECIPE);
        lines.line(Map.of("html", fragments.recipe(scenario, verdict, mends), "recipes", Mends.recipes(mends)));
    }

    /** Several cook days. */
    void weeks(Question question, Work.Job job, Lines lines) throws IOException {
        HorizonScenario scenario;
        try {
            scenario = reader().readWithHorizon(question.name(), bytes(question.scenario()), null);
        } catch (ScenarioException e) {
            lines.line(Map.of("faults", faults(e)));
            return;
        }
        job.now("Planning the first batch");
        Sessions.Answer answer = new Sessions(knowledge, job.solver())
                .plan(scenario, WEEKS, done -> job.now("Planning, " + done + " batches are ready"));
        if (answer instanceof Sessions.Answer.NoPlan none) {
            lines.line(Map.of(
                    "failed",
                    List.of("The batch of " + none.none().household().start() + ", for "
                            + none.interval().days() + " days, has no plan with what the batches before it leave.")));
            return;
        }
        HorizonPlan plan = ((Sessions.Answer.Planned) answer).plan();
        List<Finding> findings = new ArrayList<>(plan.audit(knowledge));
        HorizonCalendar.Checked calendar = HorizonCalendar.of(plan, knowledge);
        findings.addAll(calendar.findings());
        lines.line(
                findings.isEmpty()
                        ? Map.of("html", fragments.weeks(plan, calendar.calendar()))
                        : Map.of("failed", findings(findings)));
    }

    /** A plan that was shown, for sheets. */
    Planner.Result.Planned shown(@Nullable String hash) throws Refused {
        return plans.of(String.valueOf(hash))
                .map(Planner.Searched::result)
                .map(Planner.Result.Planned.class::cast)
                .orElseThrow(() -> new Refused(
                        Refused.NOT_FOUND, "this plan is no longer known here; go back to the page and plan again"));
    }

    Fragments fragments() {
        return fragments;
    }

    private List<Object> energies(Question question) throws ScenarioException {
        List<Object> dogs = new ArrayList<>();
        for (Optional<ScenarioReader.DogEnergy> each : reader().energies(question.name(), bytes(question.scenario()))) {
            dogs.add(each.map(Answers::energy).orElse(Map.of()));
        }
        return dogs;
    }

    private static Map<String, Object> energy(ScenarioReader.DogEnergy energy) {
        return Map.of(
                "kcalPerDay",
                energy.need().kcalPerDay(),
                "weightKg",
                energy.dog().weightKg(),
                "words",
                String.format(Locale.ENGLISH, "%,.0f kcal a day", energy.need().kcalPerDay())
                        + (energy.dog().otherKcalPerDay() > 0
                                ? ", " + Show.number(energy.dog().otherKcalPerDay())
                                        + " of them from treats and other food"
                                : ""),
                "how",
                energy.need().stage().words() + "; " + energy.need().equation() + " ("
                        + energy.need().source() + ")");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static List<Object> faults(ScenarioException e) {
        List<Object> faults = new ArrayList<>();
        for (Fault fault : e.faults()) {
            faults.add(Map.of("path", fault.path(), "message", fault.message()));
        }
        return faults;
    }

    private static List<String> findings(List<Finding> findings) {
        List<String> words = new ArrayList<>();
        words.add("The plan failed the audit and is not shown:");
        findings.forEach(finding -> words.add(finding.toString()));
        return words;
    }
}
