package packpot.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import packpot.explain.Mend;
import packpot.explain.MendEdits;
import packpot.explain.Planner;
import packpot.explain.WhyNot;
import packpot.household.Edit;
import packpot.household.EditableScenario;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.report.WhyNotReport;
import packpot.search.Search;
import packpot.solver.Solver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Why a scenario has no plan, and what would mend it. */
@Command(
        name = "why-not",
        mixinStandardHelpOptions = true,
        description = {
            "Explain why a scenario has no plan: the fewest wishes that clash, with figures, and what would mend it at"
                    + " what price. Every mend that is shown has a plan that passed the audit.",
            "",
            "A clash is a set of wishes that cannot hold together, though the others can once any one of them is"
                    + " dropped. Mends: a wish loosened by as little as will do, a food added, an addition, a second"
                    + " cook day, a second pot.",
            "",
            "With --apply a mend of the list is taken over into a scenario of its own, which plan then takes."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:there is a plan after all; with --apply: the mend was taken over",
            "1:a fault of the program",
            "2:the command was used wrongly; with --apply: no such mend, one that is no change of one scenario, or"
                    + " there is a plan already; nothing was written",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan, and this is why",
            "5:there is a plan, but it failed the audit",
            "6:neither a plan nor a reason was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot why-not mine.json",
            "  packpot why-not mine.json --json --out why.json",
            "  packpot why-not mine.json --apply 2 --to mended.json",
            "  packpot why-not mine.json --change \"all chicken: out of stock\""
        })
final class WhyNotCommand extends ScenarioCommand {
    /** Of wall time: enough for most scenarios. */
    static final int USUAL_SECONDS = 30;

    private static final int MOST_MENDS = 1000;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "" + USUAL_SECONDS,
            description = "longest time in all; what is not tried by then is said; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--change",
            paramLabel = "CHANGE",
            description = "explain the scenario after a change, as what-if takes it; give the option again for more,"
                    + " which then hold together")
    private List<String> changes = List.of();

    @Option(
            names = "--apply",
            paramLabel = "N",
            description = "take mend N of the list over: write the scenario with it into the file that --to names."
                    + " Mends are searched again, so give the same --time-limit and --change as for the list")
    private @Nullable Integer apply;

    @Option(names = "--to", paramLabel = "FILE", description = "the file that --apply writes")
    private @Nullable Path to;

    @SuppressWarnings("NullAway.Init")
    WhyNotCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        timeLimit(seconds);
        checkApply();
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        EditableScenario scenario =
                Scenarios.changes(knowledge, scenario()).scenario(Scenarios.changes(changes), List.of());
        AtomicReference<String> now = new AtomicReference<>("");
        WhyNot.Answer answer = Progress.during(
                now::get, () -> new WhyNot(knowledge, solver).explain(scenario.household(), seconds, now::set));
        if (answer instanceof WhyNot.Answer.HasPlan has) {
            return hasPlan(has.planned());
        }
        if (answer instanceof WhyNot.Answer.NoPlan none) {
            MendEdits edits = Scenarios.edits(knowledge, scenario);
            print(() -> WhyNotReport.text(none, edits), () -> WhyNotReport.json(none, edits));
            return apply == null || to == null ? ExitCode.NO_PLAN : takeOver(none, edits, apply, to);
        }
        say("Neither a plan nor a proof that there is none was found in the time. Give more with" + " --time-limit.");
        return ExitCode.NO_PLAN_IN_TIME;
    }

    private void checkApply() throws OutputException {
        if ((apply == null) != (to == null)) {
            throw wrongUse("--apply and --to go together: --apply N --to FILE writes the scenario with mend N");
        }
        if (apply != null && to != null) {
            range("--apply", apply, 1, MOST_MENDS);
            checkFile("--to", to);
        }
    }

    /** Writes the scenario with one mend, once the list is printed. */
    private int takeOver(WhyNot.Answer.NoPlan none, MendEdits edits, int number, Path file)
            throws ScenarioException, OutputException {
        List<Mend> mends = none.told();
        if (mends.isEmpty()) {
            say("No mend was found, so nothing was written. Give more time with --time-limit.");
            return ExitCode.NO_PLAN;
        }
        if (number > mends.size()) {
            say("There is no mend " + number + ": expected --apply 1 to " + mends.size()
                    + ", a number of the list. Nothing was written.");
            return ExitCode.WRONG_USE;
        }
        Mend mend = mends.get(number - 1);
        Optional<List<Edit>> found = edits.of(mend);
        if (found.isEmpty()) {
            say("Mend " + number + ", " + String.join(", and ", mend.changes())
                    + ", is more than one scenario can say, so nothing was written. Choose another, or write the"
                    + " scenarios by hand.");
            return ExitCode.WRONG_USE;
        }
        writeFile(file, edits.text(found.get()));
        say(WhyNotReport.takenOver(number, mend, file.toString()).stripTrailing());
        return ExitCode.DONE;
    }

    private int hasPlan(Planner.Result.Planned planned) throws OutputException {
        boolean passed = planned.verdict().passed();
        print(
                () -> passed
                        ? WhyNotReport.hasPlanText(planned.plan(), scenario().toString(), !changes.isEmpty())
                        : "",
                () -> WhyNotReport.hasPlanJson(planned.plan(), passed));
        if (!passed) {
            say("There is a plan, but it failed the audit: "
                    + planned.verdict().findings().get(0) + ". Do not feed it.");
            return ExitCode.AUDIT_FAILED;
        }
        if (apply != null) {
            say("There is a plan without any mend, so there is none to take over and nothing was written.");
            return ExitCode.WRONG_USE;
        }
        return ExitCode.DONE;
    }
}
