package packpot.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.Finding;
import packpot.audit.NutrientLine;
import packpot.audit.RecipeVerdict;
import packpot.explain.RecipeMend;
import packpot.explain.RecipeSwap;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.units.Show;
import packpot.words.Sentence;

/** A checked recipe for people at a terminal, in 80 columns, and for programs. */
public final class RecipeReport {
    /** A blank at which no line is broken. */
    private static final char TIED = '\u00a0';

    private final Recipe recipe;
    private final Household household;
    private final Knowledge knowledge;
    private final RecipeVerdict verdict;
    private final List<RecipeMend> mends;
    private final @Nullable RecipeSwap swap;
    private final double bandShare;
    private final Page page = new Page();

    /**
     * A report.
     *
     * @param mends empty when none were asked for
     * @param swap null when none was asked for
     * @param bandShare of the cheapest recipe of its character
     */
    public RecipeReport(
            RecipeScenario scenario,
            Knowledge knowledge,
            RecipeVerdict verdict,
            List<RecipeMend> mends,
            @Nullable RecipeSwap swap,
            double bandShare) {
        this.recipe = scenario.recipe();
        this.household = scenario.household();
        this.knowledge = knowledge;
        this.verdict = verdict;
        this.mends = List.copyOf(mends);
        this.swap = swap;
        this.bandShare = bandShare;
    }

    /** For people. */
    public String text() {
        head();
        asRead();
        verdictByDog();
        findings("Not safe", verdict.safety());
        findings("How the pot looks, beside what is usual or wished; it binds no mend", verdict.shape());
        page.items("To mind", verdict.advice());
        NutrientText.joined(verdict.dogs()).forEach(table -> page.raw("\n").raw(table));
        page.raw("\nshort, over: below the profile's minimum, above its maximum\n");
        page.raw(NutrientText.marksLegend(verdict.dogs()));
        page.paragraph("Energy of food: " + household.foodEnergy().key() + ": "
                + knowledge.foodEnergy().words(household.foodEnergy()));
        RecipeSwap swapped = swap;
        if (swapped != null) {
            RecipeSwapText.write(page, swapped);
        }
        mendsText().write(page);
        page.items("Taken for granted, since neither recipe nor scenario says", defaults());
        page.raw("\n").paragraph(Disclaimer.TEXT);
        return page.toString();
    }

    private RecipeMendsText mendsText() {
        return new RecipeMendsText(mends, household, RecipeFigures.costPerDay(recipe, verdict), bandShare);
    }

    /** One mend as a plan in full, for people. */
    public static String inFull(
            RecipeMend.Way way, RecipeMend.Outcome.Planned planned, Household household, double bandShare) {
        return TextReport.of(
                planned.plan(), planned.verdict(), household.units(), RecipeMendsText.words(way, bandShare));
    }

    private List<String> defaults() {
        Set<String> all = new LinkedHashSet<>(recipe.remarks());
        boolean otherMoney = !household.currency().equals("USD")
                && recipe.remarks().stream().anyMatch(remark -> remark.contains("guessed"));
        if (otherMoney) {
            all.add("guessed prices are US figures, taken as " + household.currency() + " as they stand");
        }
        Set<String> used = new LinkedHashSet<>();
        recipe.foods().forEach(part -> used.add(part.item().food().label()));
        for (RecipeMend mend : mends) {
            if (mend.outcome() instanceof RecipeMend.Outcome.Planned planned) {
                planned.plan().shopping().forEach(purchase -> used.add(purchase.label()));
            }
        }
        Set<String> unused = new LinkedHashSet<>();
        household.pantry().forEach(item -> unused.add(item.food().label()));
        unused.removeAll(used);
        // What was taken for granted about foods that come up nowhere here tells nobody anything.
        household.defaults().stream()
                .map(Sentence::toString)
                .filter(sentence -> unused.stream().noneMatch(label -> sentence.startsWith(label + ":")))
                .forEach(all::add);
        return new ArrayList<>(all);
    }

    private void head() {
        page.heading(recipe.name() + ", checked", 20);
        page.paragraph("For "
                + String.join(
                        ", ", recipe.dogs().stream().map(dog -> dog.name()).toList()) + ", " + recipe.days()
                + (recipe.days() == 1 ? " day" : " days") + ". "
                + (verdict.good()
                        ? "It is good as it stands: every dog gets its energy and every minimum, and no maximum is passed."
                        : "It is NOT complete; what is wrong stands below."));
    }

    private void asRead() {
        page.title("The recipe as read: edible grams before cooking");
        TextTable table = new TextTable("rrl").row("raw", "of pot", "");
        for (Recipe.Part part : recipe.foods()) {
            table.row(
                    RecipeFigures.grams(part.grams()),
                    RecipeFigures.percent(part.cookedGrams() / recipe.cookedGrams()),
                    part.item().food().label() + ", "
                            + part.item().preparation().label() + " (" + part.written() + ")");
        }
        page.table(table);
        for (Recipe.Addition addition : recipe.additions()) {
            page.item(addition.dog() + ", every day: " + addition.item().food().label() + ", " + addition.written()
                    + " (" + Show.number(addition.gramsPerDay()) + " g)");
        }
    }

    private void verdictByDog() {
        page.title("What it brings, the pot split by the energy that each dog needs");
        for (DogAudit dog : verdict.dogs()) {
            page.item(String.format(
                    Locale.ROOT,
                    "%s: %,.0f kcal a day, %.0f %% of the %,.0f needed from it",
                    dog.dog(),
                    dog.kcalPerDay(),
                    100 * dog.kcalPerDay() / dog.targetKcalPerDay(),
                    dog.targetKcalPerDay()));
        }
        Map<List<String>, List<String>> dogsByLines = new LinkedHashMap<>();
        for (DogAudit dog : verdict.dogs()) {
            List<String> lines = new ArrayList<>();
            judged(dog, true, lines);
            judged(dog, false, lines);
            dogsByLines.computeIfAbsent(lines, key -> new ArrayList<>()).add(dog.dog());
        }
        dogsByLines.forEach((lines, names) ->
                lines.forEach(line -> page.raw(Wrap.item(String.join(", ", names) + ": " + line, "  ", TextReport.WIDTH)
                        .replace(TIED, ' '))));
    }

    private static void judged(DogAudit dog, boolean less, List<String> lines) {
        List<String> each = dog.nutrients().stream()
                .filter(line -> less ? line.tooLittle() : line.tooMuch())
                .map(line -> line.label().replace(' ', TIED) + TIED + of(line, less) + (line.thin() ? "?" : ""))
                .toList();
        if (!each.isEmpty()) {
            lines.add(
                    (less ? "SHORT, in % of the minimum: " : "OVER, in % of the maximum: ") + String.join(", ", each));
        }
    }

    /** Got as a share of the limit. */
    private static String of(NutrientLine line, boolean less) {
        Double limit = less ? line.minimum() : line.maximum();
        double got = less ? line.got() : line.gotAgainstMaximum();
        return limit == null || limit == 0 || Double.isInfinite(got)
                ? "(no end)"
                : String.format(Locale.ROOT, "%.0f", 100 * got / limit);
    }

    private void findings(String title, List<Finding> findings) {
        page.items(title, findings.stream().map(Finding::toString).distinct().toList());
    }

    /** For programs; the fields are described in models/recipe-check.schema.json. */
    public String json() {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotRecipeCheck", JsonReport.FORMAT);
        root.put("good", verdict.good());
        root.put("recipe", RecipeData.recipe(recipe, RecipeFigures.costPerDay(recipe, verdict), household.currency()));
        root.put("verdict", verdict);
        RecipeSwap swapped = swap;
        root.put("swap", swapped == null ? null : RecipeData.swap(swapped));
        root.put(
                "mends",
                mends.stream()
                        .map(mend -> RecipeData.mend(mend, mendsText().words(mend.way())))
                        .toList());
        root.put("takenForGranted", defaults());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }
}
