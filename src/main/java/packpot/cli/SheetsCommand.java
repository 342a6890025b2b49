package packpot.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import packpot.audit.CalendarCheck;
import packpot.explain.Losses;
import packpot.explain.Planner;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioException;
import packpot.plan.CalendarBuilder;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.report.CalendarFile;
import packpot.report.CalendarReport;
import packpot.report.JsonReport;
import packpot.report.OutputFile;
import packpot.report.OutputFolder;
import packpot.search.Search;
import packpot.sheets.LabelSheet;
import packpot.sheets.Paper;
import packpot.sheets.PdfFile;
import packpot.sheets.SheetSource;
import packpot.sheets.Sheets;
import packpot.sheets.Tables;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;
import packpot.words.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Sheets to shop, cook and feed from, and to show to a veterinarian. */
@Command(
        name = "sheets",
        mixinStandardHelpOptions = true,
        description = {
            "Plan one cook day, and write its sheets: shopping list, cook day, portions, calendar, pictures, a sheet for"
                    + " the veterinarian and bag labels, as one page of HTML and as PDF, with its tables as CSV, its"
                    + " calendar as iCalendar and the plan as JSON."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:sheets of a plan that passed the audit",
            "1:a fault of the program",
            "2:the command was used wrongly",
            "3:the scenario has faults, all listed; nothing was written",
            "4:there is no plan for these wishes",
            "5:the plan failed the audit, or its calendar the check; nothing was written",
            "6:no plan was found in the time given",
            "7:the sheets could not be written; no half of them is left"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  packpot sheets scenarios/three-adults.json --to kitchen",
            "  packpot sheets mine.json --to mine.pdf --locale de --labels a4-21"
        })
final class SheetsCommand extends ScenarioCommand {
    private static final double STAND_IN_GAP = 0.01;

    @Option(
            names = "--to",
            required = true,
            paramLabel = "FOLDER",
            description = "write the sheets into this folder; a name that ends in .html or .pdf is one file")
    private Path to;

    @Option(names = "--paper", paramLabel = "PAPER", description = "a4 or letter; default: by the household's units")
    private @Nullable String paper;

    @Option(
            names = "--labels",
            paramLabel = "SHEET",
            description = "sheet of labels, paper and labels on it: a4-14,"
                    + " a4-8, a4-21, letter-10, letter-6, letter-14; default: the first of the paper")
    private @Nullable String labels;

    @Option(
            names = "--locale",
            paramLabel = "TAG",
            description = "language and country of words, figures and dates, such as en-US, en-GB, de-DE, de-CH;"
                    + " default: the scenario's \"locale\", or else en-US")
    private @Nullable String locale;

    @Option(
            names = "--no-stand-ins",
            description = "leave out what takes the place of each food that the shop is out of: a plan for each of them"
                    + " takes most of the time")
    private boolean noStandIns;

    @Mixin
    private final SearchOptions search = new SearchOptions(0.1);

    @SuppressWarnings("NullAway.Init")
    SheetsCommand() {}

    @Override
    Integer answer() throws ScenarioException, OutputException {
        checkTarget();
        SolveLimits limits = limits(search.seconds(), search.gapPercent());
        Solver solver = new Search();
        Knowledge knowledge = Knowledge.load();
        Household household = household(knowledge);
        Texts texts = texts(household);
        Paper sheet = paper(household);
        LabelSheet labelSheet = labelSheet(sheet);
        if (!oneFile().equals(".html")) {
            PdfFile.getReady();
        }
        Planner.Result result =
                Progress.during("Planning", () -> new Planner(knowledge, solver).plan(household, limits));
        if (result instanceof Planner.Result.NoPlan none) {
            return noPlan(none, knowledge, solver, "packpotSheets", "there are no sheets");
        }
        Planner.Result.Planned planned = (Planner.Result.Planned) result;
        Plan plan = planned.plan();
        FeedingCalendar calendar = CalendarBuilder.of(plan, household, knowledge);
        if (!planned.verdict().passed()
                || !CalendarCheck.check(plan, household, knowledge, calendar).isEmpty()) {
            say("The plan failed the audit, so there are no sheets of it; packpot plan and packpot calendar show why.");
            return ExitCode.AUDIT_FAILED;
        }
        List<Losses.Loss> standIns = noStandIns ? List.of() : standIns(planned, knowledge, solver);
        SheetSource source = new SheetSource(household, knowledge, plan, planned.verdict(), calendar, standIns);
        String html = new Sheets(source, texts, sheet, labelSheet).html();
        Map<String, byte[]> files = files(source, texts, html, calendar);
        write(files);
        if (files.containsKey("sheets.pdf")) {
            String unknown = PdfFile.unknown(html);
            if (!unknown.isEmpty()) {
                say("The PDF cannot set " + unknown
                        + ": it shows # for them, or puts them in a wrong order. The HTML is"
                        + " right, and a browser prints it.");
            }
        }
        print(
                () -> "Sheets of " + household.name() + " are in " + to
                        + (oneFile().isEmpty() ? ": " + String.join(", ", files.keySet()) : "") + ".\n",
                () -> JsonReport.of(
                        Map.of("packpotSheets", JsonReport.FORMAT, "to", to.toString(), "files", files.keySet())));
        return ExitCode.DONE;
    }

    private List<Losses.Loss> standIns(Planner.Result.Planned planned, Knowledge knowledge, Solver solver) {
        AtomicReference<String> now = new AtomicReference<>("Planning without each food");
        int all = planned.plan().shopping().size();
        return Progress.during(
                now::get,
                () -> Losses.each(
                        planned,
                        knowledge,
                        solver,
                        new SolveLimits(search.seconds(), Math.max(STAND_IN_GAP, search.gapPercent() / 100)),
                        done -> now.set("Planned without " + done + " of " + all + " foods")));
    }

    private Map<String, byte[]> files(SheetSource source, Texts texts, String html, FeedingCalendar calendar)
            throws OutputException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        String one = oneFile();
        if (!one.equals(".pdf")) {
            files.put("sheets.html", html.getBytes(StandardCharsets.UTF_8));
        }
        if (!one.equals(".html")) {
            try {
                files.put("sheets.pdf", PdfFile.of(html));
            } catch (IOException e) {
                throw new OutputException("The PDF could not be made: " + e.getMessage(), e);
            }
        }
        if (one.isEmpty()) {
            Tables.of(source).forEach((name, text) -> files.put(name, text.getBytes(StandardCharsets.UTF_8)));
            files.put(
                    "calendar.ics",
                    CalendarFile.of(calendar, texts, Instant.now()).getBytes(StandardCharsets.UTF_8));
            files.put("calendar.json", CalendarReport.json(calendar, List.of()).getBytes(StandardCharsets.UTF_8));
            files.put(
                    "plan.json",
                    JsonReport.plan(source.plan(), source.verdict()).getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    /** ".html" or ".pdf" where one file is asked for, or else nothing. */
    private String oneFile() {
        String name = String.valueOf(to.getFileName()).toLowerCase(Locale.ROOT);
        return name.endsWith(".html") ? ".html" : name.endsWith(".pdf") ? ".pdf" : "";
    }

    private void checkTarget() throws OutputException {
        if (to.toString().isBlank()) {
            throw wrongUse("--to: expected the name of a folder, or of a file that ends in .html or .pdf");
        }
        try {
            if (oneFile().isEmpty()) {
                OutputFolder.check(to, overwrite());
            } else {
                OutputFile.check(to, overwrite());
            }
        } catch (IOException e) {
            throw new OutputException(String.valueOf(e.getMessage()), e);
        }
    }

    private void write(Map<String, byte[]> files) throws OutputException {
        try {
            if (oneFile().isEmpty()) {
                OutputFolder.write(to, files, overwrite());
            } else {
                OutputFile.write(to, files.values().iterator().next(), overwrite());
            }
        } catch (IOException e) {
            throw new OutputException(String.valueOf(e.getMessage()), e);
        }
    }

    private Texts texts(Household household) {
        String tag = locale == null ? household.locale().toLanguageTag() : locale;
        try {
            return Texts.of(new Locale.Builder().setLanguageTag(tag).build());
        } catch (RuntimeException e) {
            throw wrongUse(
                    "--locale: read \"" + tag + "\", expected one of the languages " + Texts.languages()
                            + ", with a country if you like, such as de-AT",
                    e);
        }
    }

    private Paper paper(Household household) {
        String name = paper;
        if (name == null) {
            return Paper.usual(household.units());
        }
        for (Paper each : Paper.values()) {
            if (each.key().equalsIgnoreCase(name)) {
                return each;
            }
        }
        throw wrongUse("--paper: read \"" + name + "\", expected a4 or letter");
    }

    private LabelSheet labelSheet(Paper sheet) {
        List<LabelSheet> there = LabelSheet.on(sheet);
        String name = labels;
        return there.stream()
                .filter(each -> name == null || each.id().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> wrongUse("--labels: read \"" + name + "\", expected, on this paper, one of "
                        + String.join(", ", there.stream().map(LabelSheet::id).toList())));
    }
}
