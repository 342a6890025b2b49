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
import packpot.explain.Clash;
import packpot.explain.Mend;
import packpot.explain.RecipeSwap;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.Recipe;
import packpot.household.RecipeScenario;
import packpot.plan.Plan;
import packpot.units.Show;

/** A checked recipe for people at a terminal, in 80 columns, and for programs. */
public final class RecipeReport {
    private static final int WIDTH = TextReport.WIDTH;
    /** A blank at which no line is broken. */
    private static final char TIED = '\u00a0';
    /** Changes that no kitchen scale shows. */
    private static final double NO_CHANGE = 0.005;

    private final Recipe recipe;
    private final Household household;
    private final Knowledge knowledge;
    private final RecipeVerdict verdict;
    private final List<Mend> mends;
    private final @Nullable RecipeSwap swap;
    private final double bandShare;
    private final StringBuilder text = new StringBuilder();

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
            List<Mend> mends,
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
        sentences("To mind", verdict.advice());
        for (DogAudit dog : verdict.dogs()) {
            text.append('\n').append(NutrientText.table(dog));
        }
        text.append("\nshort, over: below the profile's minimum, above its maximum\n");
        text.append(NutrientText.marksLegend(verdict.dogs()));
        text.append(wrap("Energy of food: " + household.foodEnergy().key() + ": "
                + knowledge.foodEnergy().words(household.foodEnergy())));
        RecipeSwap swapped = swap;
        if (swapped != null) {
            swap(swapped);
        }
        mends();
        sentences("Taken for granted, since neither recipe nor scenario says", defaults());
        text.append('\n')
                .append(String.join("\n", Wrap.lines(Disclaimer.TEXT, WIDTH)))
                .append('\n');
        return text.toString();
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
        for (Mend mend : mends) {
            if (mend.outcome() instanceof Mend.Outcome.Planned planned) {
                planned.plan().shopping().forEach(purchase -> used.add(purchase.label()));
            }
        }
        Set<String> unused = new LinkedHashSet<>();
        household.pantry().forEach(item -> unused.add(item.food().label()));
        unused.removeAll(used);
        // What was taken for granted about foods that come up nowhere here tells nobody anything.
        household.defaults().stream()
                .filter(sentence -> unused.stream().noneMatch(label -> sentence.startsWith(label + ":")))
                .forEach(all::add);
        return new ArrayList<>(all);
    }

    private void head() {
        String title = recipe.name() + ", checked";
        text.append(title).append('\n');
        text.append("=".repeat(Math.min(WIDTH, Math.max(20, title.length())))).append('\n');
        text.append(wrap("For "
                + String.join(
                        ", ", recipe.dogs().stream().map(dog -> dog.name()).toList()) + ", " + recipe.days()
                + (recipe.days() == 1 ? " day" : " days") + ". "
                + (verdict.good()
                        ? "It is good as it stands: every dog gets its energy and every minimum, and no maximum is passed."
                        : "It is NOT complete; what is wrong stands below.")));
    }

    private void asRead() {
        title("The recipe as read: edible grams before cooking");
        TextTable table = new TextTable("rrl").row("raw", "of pot", "");
        for (Recipe.Part part : recipe.foods()) {
            table.row(
                    grams(part.grams()),
                    percent(part.cookedGrams() / recipe.cookedGrams()),
                    part.item().food().label() + ", "
                            + part.item().preparation().label() + " (" + part.written() + ")");
        }
        text.append(table.render("  ", WIDTH));
        for (Recipe.Addition addition : recipe.additions()) {
            text.append(Wrap.item(
                    addition.dog() + ", every day: " + addition.item().food().label() + ", " + addition.written() + " ("
                            + Show.number(addition.gramsPerDay()) + " g)",
                    "  ",
                    WIDTH));
        }
    }

    private void verdictByDog() {
        title("What it brings, the pot split by the energy that each dog needs");
        for (DogAudit dog : verdict.dogs()) {
            text.append(Wrap.item(
                    String.format(
                            Locale.ROOT,
                            "%s: %,.0f kcal a day, %.0f %% of the %,.0f needed from it",
                            dog.dog(),
                            dog.kcalPerDay(),
                            100 * dog.kcalPerDay() / dog.targetKcalPerDay(),
                            dog.targetKcalPerDay()),
                    "  ",
                    WIDTH));
        }
        Map<List<String>, List<String>> dogsByLines = new LinkedHashMap<>();
        for (DogAudit dog : verdict.dogs()) {
            List<String> lines = new ArrayList<>();
            judged(dog, true, lines);
            judged(dog, false, lines);
            dogsByLines.computeIfAbsent(lines, key -> new ArrayList<>()).add(dog.dog());
        }
        dogsByLines.forEach((lines, names) -> lines.forEach(line -> text.append(
                Wrap.item(String.join(", ", names) + ": " + line, "  ", WIDTH).replace(TIED, ' '))));
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
        sentences(title, findings.stream().map(Finding::toString).distinct().toList());
    }

    private void sentences(String title, List<String> sentences) {
        if (!sentences.isEmpty()) {
            title(title);
            sentences.forEach(sentence -> text.append(Wrap.item(sentence, "  ", WIDTH)));
        }
    }

    private void swap(RecipeSwap swapped) {
        title("Swap, by equal " + swapped.by().key());
        for (RecipeSwap.Exchange exchange : swapped.exchanges()) {
            text.append(Wrap.item(
                    grams(exchange.fromGrams()) + " of " + exchange.from() + " become " + grams(exchange.toGrams())
                            + " of " + exchange.to()
                            + (exchange.sameGroup()
                                    ? ""
                                    : "; mind: the one is of the group " + exchange.fromGroup() + ", the other of "
                                            + exchange.toGroup()),
                    "  ",
                    WIDTH));
        }
        text.append('\n');
        Map<List<RecipeSwap.Moved>, List<String>> dogsByMoved = new LinkedHashMap<>();
        for (int i = 0; i < swapped.before().dogs().size(); i++) {
            DogAudit was = swapped.before().dogs().get(i);
            DogAudit is = swapped.after().dogs().get(i);
            text.append(String.format(
                    Locale.ROOT,
                    "  %s: %,.0f kcal a day before, %,.0f after, of %,.0f needed%n",
                    was.dog(),
                    was.kcalPerDay(),
                    is.kcalPerDay(),
                    was.targetKcalPerDay()));
            List<RecipeSwap.Moved> moved = swapped.moved().stream()
                    .filter(each -> each.dog().equals(was.dog()))
                    .map(RecipeSwap.Moved::ofAnyDog)
                    .toList();
            dogsByMoved.computeIfAbsent(moved, key -> new ArrayList<>()).add(was.dog());
        }
        dogsByMoved.forEach((moved, names) -> text.append('\n')
                .append(String.join(", ", names))
                .append('\n')
                .append(
                        moved.isEmpty()
                                ? "  no nutrient moved by more than " + percent(swapped.share()) + "\n"
                                : moved(moved).render("  ", WIDTH)));
        text.append(wrap("Listed are nutrients that moved by more than " + percent(swapped.share()) + "."));
        List<Finding> unsafe = swapped.after().safety().stream()
                .filter(finding -> !swapped.before().safety().contains(finding))
                .toList();
        findings("Not safe after the swap", unsafe);
    }

    private static TextTable moved(List<RecipeSwap.Moved> moved) {
        // The maximum is rarely near, and with it the table would be too wide for its last column.
        boolean over = moved.stream().anyMatch(each -> each.now().contains("over"));
        TextTable table = new TextTable("lrrrrl")
                .row("per 1000 kcal", over ? "limit" : "minimum", "before", "after", "moved", "");
        moved.forEach(each -> table.row(
                each.unit().isEmpty() ? each.nutrient() : each.nutrient() + ", " + each.unit(),
                each.now().contains("over") ? "at most " + limit(each.maximum()) : limit(each.minimum()),
                Show.number(each.before()),
                Show.number(each.after()),
                signed(each.change()),
                each.now()));
        return table;
    }

    private static String limit(@Nullable Double limit) {
        return limit == null ? "-" : Show.number(limit);
    }

    private void mends() {
        for (Mend mend : mends) {
            title(words(mend.way()));
            if (mend.outcome() instanceof Mend.Outcome.Planned planned) {
                planned(mend.way(), planned);
            } else if (mend.outcome() instanceof Mend.Outcome.None none) {
                text.append(wrap("  No: " + none.reason() + "."));
                Clash clash = none.clash();
                if (clash != null) {
                    text.append(wrap("  What stands in the way: " + ClashText.words(clash)));
                    text.append(ClashText.items(clash, "  "));
                }
            }
        }
        if (!mends.isEmpty()) {
            text.append('\n')
                    .append(wrap(
                            "The mends use the recipe's foods and supplements alone, the first also a little oil (with the"
                                    + " recipe's own within the household's share of it). The second is sought among all"
                                    + " supplements of the catalogue, the others look there only when the pantry's do not do."
                                    + " They keep "
                                    + Show.number(100 * household.rules().margin())
                                    + " % above every minimum (a recipe that is good already need not). How the pot looks, how"
                                    + " many foods it has and how many additions a bowl gets binds the first two not at all, the"
                                    + " third as far as the recipe itself keeps it; caps that a food carries for the dog's sake"
                                    + " bind all three. Pot, bags and freezer of the household hold, its budget does not. Each"
                                    + " mend passed the audit that every plan passes."));
        }
    }

    private String words(Mend.Way way) {
        return switch (way) {
            case ADDITIONS_ONLY -> "Mend 1: additions only, at least cost; the pot's proportions stay";
            case SMALLEST_CHANGE -> "Mend 2: the smallest change of the amounts";
            case CHEAPEST_ALIKE ->
                "Mend 3: the cheapest with the same foods, shares within " + percent(bandShare) + " of theirs";
        };
    }

    private void planned(Mend.Way way, Mend.Outcome.Planned planned) {
        text.append(wrap(scaled(way, planned)));
        TextTable table = new TextTable("rrrl").row("recipe", "now", "", "");
        for (Mend.Change change : planned.foods()) {
            table.row(
                    change.recipeGrams() > 0 ? grams(change.recipeGrams()) : "-",
                    grams(change.grams()),
                    Double.isInfinite(change.relative())
                            ? "new"
                            : Math.abs(change.relative()) < NO_CHANGE ? "same" : signed(change.relative()),
                    change.label());
        }
        text.append(table.render("  ", WIDTH));
        TextTable bowls = new TextTable("ll");
        for (Plan.DogPlan dog : planned.plan().dogs()) {
            bowls.row(dog.name(), Show.number(dog.potGramsPerDay()) + " g a day of the cooked pot");
            for (Plan.Addition addition : dog.additions()) {
                bowls.row(
                        "",
                        "+ " + addition.label() + ": " + addition.dose()
                                + (addition.onDays().size() == planned.plan().days()
                                        ? ", once a day"
                                        : (addition.onDays().size() == 1 ? ", on day " : ", on days ")
                                                + String.join(
                                                        ", ",
                                                        addition.onDays().stream()
                                                                .map(String::valueOf)
                                                                .toList())));
            }
        }
        text.append(bowls.render("  ", WIDTH));
        text.append(
                wrap("  " + Show.money(planned.costPerDay(), planned.plan().currency()) + " a day for what is used, by"
                        + " weight; the recipe as it stands, scaled to the same energy, "
                        + Show.money(recipeCostPerDay(), planned.plan().currency()) + "."));
        planned.guessed().forEach(guess -> text.append(Wrap.item("not in the pantry: " + guess, "  ", WIDTH)));
        planned.left()
                .forEach(left ->
                        text.append(Wrap.item("the recipe passes it, so it does not bind: " + left, "  ", WIDTH)));
    }

    private String scaled(Mend.Way way, Mend.Outcome.Planned planned) {
        String size = Math.abs(planned.scale() - 1) < NO_CHANGE
                ? "The batch keeps its size"
                : String.format(
                        Locale.ROOT,
                        "%s times %.2f, to bring the energy that is needed",
                        way == Mend.Way.ADDITIONS_ONLY ? "All foods" : "The batch",
                        planned.scale());
        return "  " + size
                + switch (way) {
                    case ADDITIONS_ONLY -> ".";
                    case SMALLEST_CHANGE ->
                        planned.distance() < NO_CHANGE
                                ? "; beside that no food changes."
                                : "; beside that foods change by " + percent(planned.distance())
                                        + " in all, each counted by its share of the pot.";
                    case CHEAPEST_ALIKE -> "; changes are beside that.";
                };
    }

    /** Money a day for what the recipe uses, by weight, scaled to the energy that is needed. */
    private double recipeCostPerDay() {
        double pot = recipe.foods().stream()
                .mapToDouble(part -> part.grams() * part.item().pricePerGram())
                .sum();
        double bowls = recipe.additions().stream()
                .mapToDouble(a -> a.gramsPerDay() * a.item().pricePerGram())
                .sum();
        double target =
                verdict.dogs().stream().mapToDouble(DogAudit::targetKcalPerDay).sum();
        double got = verdict.dogs().stream().mapToDouble(DogAudit::kcalPerDay).sum();
        return pot / recipe.days() * target / got + bowls;
    }

    private void title(String title) {
        text.append('\n').append(String.join("\n", Wrap.lines(title, WIDTH))).append('\n');
    }

    private static String wrap(String paragraph) {
        String indent = paragraph.startsWith("  ") ? "  " : "";
        return indent + String.join("\n" + indent, Wrap.lines(paragraph, WIDTH - indent.length())) + "\n";
    }

    /** Small amounts to a tenth, as a mend of a small batch is weighed. */
    private static String grams(double grams) {
        double tenths = Math.rint(grams * 10) / 10;
        return String.format(Locale.ROOT, tenths == Math.rint(tenths) ? "%,.0f g" : "%,.1f g", tenths);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, share < 0.0995 && share > 0 ? "%.1f %%" : "%.0f %%", 100 * share);
    }

    private static String signed(double change) {
        return Double.isInfinite(change) ? "from 0" : String.format(Locale.ROOT, "%+.0f %%", 100 * change);
    }

    /** For programs; the fields are described in models/recipe-check.schema.json. */
    public String json() {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotRecipeCheck", JsonReport.FORMAT);
        root.put("good", verdict.good());
        root.put("recipe", recipeData());
        root.put("verdict", verdict);
        RecipeSwap swapped = swap;
        root.put("swap", swapped == null ? null : swapData(swapped));
        root.put("mends", mends.stream().map(this::mendData).toList());
        root.put("takenForGranted", defaults());
        root.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(root);
    }

    private Map<String, Object> recipeData() {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("name", recipe.name());
        data.put("days", recipe.days());
        data.put("dogs", recipe.dogs().stream().map(dog -> dog.name()).toList());
        data.put("costPerDay", recipeCostPerDay());
        data.put("currency", household.currency());
        data.put(
                "foods",
                recipe.foods().stream()
                        .map(part -> {
                            Map<String, Object> food = new LinkedHashMap<>();
                            food.put("food", part.item().food().id());
                            food.put("label", part.item().food().label());
                            food.put("written", part.written());
                            food.put("grams", part.grams());
                            food.put("method", part.item().preparation().method());
                            food.put("cookedGrams", part.cookedGrams());
                            return food;
                        })
                        .toList());
        data.put(
                "additions",
                recipe.additions().stream()
                        .map(addition -> {
                            Map<String, Object> given = new LinkedHashMap<>();
                            given.put("dog", addition.dog());
                            given.put("food", addition.item().food().id());
                            given.put("label", addition.item().food().label());
                            given.put("written", addition.written());
                            given.put("gramsPerDay", addition.gramsPerDay());
                            return given;
                        })
                        .toList());
        return data;
    }

    private static Map<String, Object> swapData(RecipeSwap swapped) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("by", swapped.by().key());
        data.put("movedByMoreThanShare", swapped.share());
        data.put("exchanges", swapped.exchanges());
        data.put(
                "moved",
                swapped.moved().stream()
                        .map(each -> {
                            Map<String, Object> line = new LinkedHashMap<>();
                            line.put("dog", each.dog());
                            line.put("nutrient", each.nutrient());
                            line.put("unit", each.unit());
                            line.put("minimum", each.minimum());
                            line.put("before", finite(each.before()));
                            line.put("after", finite(each.after()));
                            line.put("maximum", each.maximum());
                            line.put("changeShare", finite(each.change()));
                            line.put("now", each.now());
                            return line;
                        })
                        .toList());
        data.put("after", swapped.after());
        return data;
    }

    private static @Nullable Double finite(double value) {
        return Double.isFinite(value) ? (Double) value : null;
    }

    private Map<String, Object> mendData(Mend mend) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("way", mend.way().key());
        data.put("words", words(mend.way()));
        if (mend.outcome() instanceof Mend.Outcome.Planned planned) {
            data.put("found", true);
            data.put("scale", planned.scale());
            data.put("distance", planned.distance());
            data.put("costPerDay", planned.costPerDay());
            data.put(
                    "foods",
                    planned.foods().stream()
                            .map(change -> {
                                Map<String, Object> food = new LinkedHashMap<>();
                                food.put("food", change.food());
                                food.put("label", change.label());
                                food.put("supplement", change.supplement());
                                food.put("recipeGrams", change.recipeGrams());
                                food.put("scaledGrams", change.scaledGrams());
                                food.put("grams", change.grams());
                                food.put("changeShare", finite(change.relative()));
                                return food;
                            })
                            .toList());
            data.put("guessedPrices", planned.guessed());
            data.put("shapeThatDoesNotBind", planned.left());
            data.put("auditPassed", planned.verdict().passed());
            data.put("plan", planned.plan());
            data.put("audit", planned.verdict());
        } else if (mend.outcome() instanceof Mend.Outcome.None none) {
            data.put("found", false);
            data.put("reason", none.reason());
            data.put("clashes", ClashText.data(none.clash()));
        }
        return data;
    }
}
