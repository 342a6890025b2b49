package packpot.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import packpot.explain.Mode;
import packpot.explain.Planner;
import packpot.explain.WhatIf;
import packpot.household.Change;
import packpot.household.Knowledge;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.report.JsonReport;
import packpot.report.TextReport;
import packpot.report.WhatIfReport;
import packpot.search.Search;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.units.Price;
import packpot.units.UnitException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The plan as it stands beside the plans after changes. */
@Command(
        name = "what-if",
        mixinStandardHelpOptions = true,
        description = {
            "Plan a scenario again after changes, and show the old and the new plan side by side.",
            "",
            "A change is \"SUBJECT: WHAT\". The subject is a dog, a food of the pantry (a part of its name will do where"
                    + " it fits one food; \"all chicken\" means every food with that word), or one of: days, meals,"
                    + " pot, pot loads, bin, bag, bags, freezer, fridge days, start, profile, margin, budget.",
            "",
            "A food: out of stock; in stock; price +10 %%; price -10 %%; price $4.49/lb; pack 5 lb; on hand 2 lb; must"
                    + " use 1 lb; at most 2 lb.",
            "A dog: comes, 30 lb, 3 years, high activity, female, intact; comes from FILE; leaves; weight 23 lb; goal"
                    + " weight 20 lb; adult weight 60 lb; age 5 months; activity high; condition 6; treats 50 kcal;"
                    + " other food 100 kcal; vet energy 600 kcal; profile NAME; avoids beef; in whelp week 5; nursing"
                    + " week 2 with 5 puppies; no longer in whelp; no longer nursing.",
            "The rest: days: 10; bags: 30; freezer: 5 cu ft chest; freezer: holds 20 l; bags: no limit; margin: 10 %%;"
                    + " profile: fediaf; budget: $60.",
            ""
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:at least one new plan, or none is needed",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario or a change has faults, all listed",
            "4:there is no plan for the scenario as it stands, or for none of the alternatives",
            "5:a plan failed the audit and is not shown",
            "6:no plan was found in the time given",
            "7:the output could not be written"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  packpot what-if scenarios/three-adults.json --change \"all chicken: out of stock\"",
            "  packpot what-if mine.json --change \"Moss: leaves\" --when bought",
            "  packpot what-if mine.json --changes asked.json --near 5%%"
        })
final class WhatIfCommand extends ScenarioCommand {
    private static final Pattern PERCENT = Pattern.compile("\\s*(\\d*\\.?\\d+)\\s*%\\s*");

    @Mixin
    private ChangeOptions changes;

    @Option(
            names = "--when",
            paramLabel = "WHEN",
            defaultValue = "BEFORE",
            description = "before: nothing is bought, all is open. bought: the old plan's shopping is done and paid."
                    + " cooked: its batch is cooked and is fed first. Default: before")
    private Mode mode;

    @Option(
            names = "--fed",
            paramLabel = "DAYS",
            defaultValue = "0",
            description = "with --when cooked: days that were fed from the old batch already")
    private int fedDays;

    @Option(
            names = "--near",
            paramLabel = "EXTRA",
            description =
                    "stay as near to the old recipe as this allows beyond the cheapest new plan: \"5%%\" or \"$3\"")
    private @Nullable String near;

    @Option(
            names = "--moved",
            paramLabel = "PERCENT",
            defaultValue = "20",
            description = "show nutrients that moved by more than this; default: ${DEFAULT-VALUE}")
    private double movedPercent;

    @Option(
            names = "--show",
            paramLabel = "LETTER",
            description = "print one new plan whole, as plan does: the letter that stands for it in the comparison")
    private @Nullable String show;

    @Mixin
    private final SearchOptions search = new SearchOptions(0.1);

    @SuppressWarnings("NullAway.Init")
    WhatIfCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        range("--moved", movedPercent, 0, 1_000_000);
        checkOptions();
        List<Change.Question> questions = changes.questions();
        int shown = shown(questions.size());
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        ScenarioChanges changed = Scenarios.changes(knowledge, scenario());
        if (fedDays > 0 && fedDays >= changed.unchanged().kitchen().days()) {
            throw wrongUse("--fed must be less than the days of the batch");
        }
        WhatIf.Terms terms =
                new WhatIf.Terms(mode, fedDays, extra(changed.unchanged().currency()), movedPercent / 100);
        WhatIf whatIf = new WhatIf(knowledge, solver, limits);
        AtomicReference<@Nullable ScenarioException> fault = new AtomicReference<>();
        AtomicInteger done = new AtomicInteger();
        int plans = questions.size() + 1;
        Optional<WhatIf.Answer> answer = Progress.during(() -> plans + " plans, " + done.get() + " done", () -> {
            try {
                return Optional.of(whatIf.ask(changed, questions, terms, done::set));
            } catch (ScenarioException e) {
                fault.set(e);
                return Optional.empty();
            }
        });
        ScenarioException refused = fault.get();
        if (refused != null) {
            throw refused;
        }
        if (answer.orElseThrow() instanceof WhatIf.Answer.NoBase none) {
            return noPlan(none.base(), knowledge, solver, "packpotWhatIf", "there is nothing to compare with");
        }
        return show((WhatIf.Answer.Compared) answer.orElseThrow(), shown);
    }

    /** The place of the plan that is to be printed whole; -1 for none. */
    private int shown(int plans) {
        String letter = show;
        if (letter == null) {
            return -1;
        }
        for (int i = 0; i < plans; i++) {
            if (WhatIfReport.letter(i).equalsIgnoreCase(letter.strip())) {
                return i;
            }
        }
        throw wrongUse("--show is the letter of a new plan, "
                + (plans == 1 ? "which is A" : "from A to " + WhatIfReport.letter(plans - 1)) + "; read \"" + letter
                + "\"");
    }

    private void checkOptions() {
        if (fedDays < 0 || (fedDays > 0 && mode != Mode.COOKED)) {
            throw wrongUse("--fed counts days from 0, and goes with --when cooked alone");
        }
        if (changes.isEmpty()) {
            throw wrongUse("What changes? Give --change \"Moss: leaves\", or --changes FILE");
        }
    }

    private WhatIf.@Nullable Extra extra(String currency) {
        String given = near;
        if (given == null) {
            return null;
        }
        Matcher percent = PERCENT.matcher(given);
        if (percent.matches()) {
            return new WhatIf.Extra(Double.parseDouble(percent.group(1)) / 100, 0);
        }
        try {
            return new WhatIf.Extra(0, Price.parse(given, currency).amount());
        } catch (UnitException e) {
            throw wrongUse("--near: read \"" + given + "\", expected a share such as 5% or money such as $3", e);
        }
    }

    private int showOne(WhatIf.Alternative alternative) throws OutputException {
        if (!(alternative.outcome() instanceof WhatIf.Outcome.NewPlan found)) {
            say("There is no new plan to show for \"" + alternative.name() + "\"; without --show it is told why.");
            return alternative.outcome() instanceof WhatIf.Outcome.NoPlan none && !none.provedImpossible()
                    ? ExitCode.NO_PLAN_IN_TIME
                    : ExitCode.NO_PLAN;
        }
        Planner.Result.Planned planned = found.planned();
        print(
                () -> TextReport.of(
                        planned.plan(), planned.verdict(), planned.household().units()),
                () -> JsonReport.plan(planned.plan(), planned.verdict()));
        return planned.verdict().passed() ? ExitCode.DONE : ExitCode.AUDIT_FAILED;
    }

    private int show(WhatIf.Answer.Compared compared, int shown) throws OutputException {
        if (!compared.base().verdict().passed()) {
            say("The plan as it stands failed the audit, so nothing is compared.");
            return ExitCode.AUDIT_FAILED;
        }
        if (shown >= 0) {
            return showOne(compared.alternatives().get(shown));
        }
        print(() -> WhatIfReport.text(compared), () -> WhatIfReport.json(compared));
        return code(compared);
    }

    private static int code(WhatIf.Answer.Compared compared) {
        int code = ExitCode.NO_PLAN;
        for (WhatIf.Alternative alternative : compared.alternatives()) {
            WhatIf.Outcome outcome = alternative.outcome();
            if (outcome instanceof WhatIf.Outcome.NewPlan plan
                    && !plan.planned().verdict().passed()) {
                return ExitCode.AUDIT_FAILED;
            }
            if (!(outcome instanceof WhatIf.Outcome.NoPlan none)) {
                code = ExitCode.DONE;
            } else if (!none.provedImpossible() && code == ExitCode.NO_PLAN) {
                code = ExitCode.NO_PLAN_IN_TIME;
            }
        }
        return code;
    }
}
