package packpot.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import packpot.audit.Verdict;
import packpot.plan.Plan;
import packpot.units.Show;
import packpot.units.UnitSystem;

/** A plan for people at a terminal, in 80 columns. */
public final class TextReport {
    static final int WIDTH = 80;
    private static final double NOTICEABLE_SHARE = 0.02;
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

    private final Plan plan;
    private final Verdict verdict;
    private final UnitSystem units;
    private final String aim;
    private final StringBuilder text = new StringBuilder();

    private TextReport(Plan plan, Verdict verdict, UnitSystem units, String aim) {
        this.plan = plan;
        this.verdict = verdict;
        this.units = units;
        this.aim = aim;
    }

    /** The whole report. */
    public static String of(Plan plan, Verdict verdict, UnitSystem units) {
        return of(plan, verdict, units, proof(plan));
    }

    /**
     * The whole report of a plan that is not made to be cheapest.
     *
     * @param aim what it is best at, in words
     */
    static String of(Plan plan, Verdict verdict, UnitSystem units, String aim) {
        return new TextReport(plan, verdict, units, aim).write();
    }

    private String write() {
        head();
        dogs();
        shopping();
        pot();
        portions();
        kitchen();
        cost();
        for (int i = 0; i < verdict.dogs().size(); i++) {
            text.append('\n').append(NutrientText.table(verdict.dogs().get(i)));
        }
        text.append(NutrientText.legend(verdict, plan));
        list("Cautions", plan.cautions());
        list("At their limit, and so what the cost hangs on", plan.atTheirLimit());
        list("Taken for granted, since the scenario does not say", plan.defaults());
        text.append('\n')
                .append(String.join("\n", Wrap.lines(Disclaimer.TEXT, WIDTH)))
                .append('\n');
        return text.toString();
    }

    private void head() {
        text.append(plan.household()).append('\n');
        text.append(Columns.underline(plan.household(), WIDTH)).append('\n');
        LocalDate last = plan.start().plusDays(plan.days() - 1L);
        text.append("Cook on ")
                .append(DATE.format(plan.start()))
                .append("; feeds ")
                .append(count(plan.days(), "day"))
                .append(", to ")
                .append(DATE.format(last))
                .append('\n');
        if (verdict.passed()) {
            text.append("Checked: every printed amount meets every minimum and maximum below\n");
        } else {
            text.append("FAILED THE CHECK. Do not feed this plan:\n");
            verdict.findings().forEach(finding -> text.append(Wrap.item(finding.toString(), "  ", WIDTH)));
        }
        text.append(aim);
        text.append("; ").append(money(plan.cost().perDay())).append(" a day\n");
    }

    private static String proof(Plan plan) {
        return String.format(
                Locale.ROOT,
                plan.proof().provedOptimal()
                        ? "Cheapest: proved to %.2f %%"
                        : "Not proved to the wished gap: it may be %.1f %% too dear",
                100 * plan.proof().gapShare());
    }

    private void dogs() {
        title("Dogs");
        TextTable table = new TextTable("lrrrl").row("", "weight", "needs a day", "of it here", "");
        Map<String, List<String>> grounds = new LinkedHashMap<>();
        for (Plan.DogPlan dog : plan.dogs()) {
            table.row(
                    dog.name(),
                    Show.bodyWeight(dog.weightKg(), units),
                    kcal(dog.energyNeedKcalPerDay()),
                    kcal(dog.batchKcalPerDay()),
                    dog.lifeStage());
            String memory = dog.energyFound().equals("memory") ? " [recalled, not read in print]" : "";
            String raised = dog.minimumsRaisedBy() > 1
                    ? String.format(Locale.ROOT, ", minimums x %.2f", dog.minimumsRaisedBy())
                    : "";
            grounds.computeIfAbsent("energy by " + dog.energyEquation() + memory, key -> new ArrayList<>())
                    .add(dog.name());
            grounds.computeIfAbsent("held to " + dog.profile() + raised, key -> new ArrayList<>())
                    .add(dog.name());
        }
        text.append(table.render("  ", WIDTH));
        grounds.forEach(
                (ground, names) -> text.append(Wrap.item(String.join(", ", names) + ": " + ground, "  ", WIDTH)));
    }

    private void shopping() {
        title("Shopping list");
        TextTable table = new TextTable("rrll");
        plan.shopping().stream().map(Plan.Purchase::section).distinct().sorted().forEach(section -> {
            table.heading("  " + section);
            plan.shopping().stream()
                    .filter(line -> line.section().equals(section))
                    .forEach(line -> shoppingLine(table, line));
        });
        text.append(table.render("  ", WIDTH));
    }

    private void shoppingLine(TextTable table, Plan.Purchase line) {
        String hand = line.fromHandGrams() > 0 ? Show.weight(line.fromHandGrams(), units) + " in the house" : "";
        if (line.buyGramsAsBought() <= 0) {
            table.row("-", "", line.label(), hand);
            return;
        }
        Integer packs = line.packs();
        String amount = packs == null ? Show.weight(line.buyGramsAsBought(), units) : packs + " x";
        boolean stays = packs != null
                && line.leftOverGrams() >= NOTICEABLE_SHARE * line.buyGramsAsBought()
                && !line.section().equals("supplements");
        String left = stays ? " (" + Show.weight(line.leftOverGrams(), units) + " over)" : "";
        String pack = packs == null ? "" : line.pack() + left;
        table.row(
                amount, money(line.pays()), line.label(), pack + (pack.isEmpty() || hand.isEmpty() ? "" : "; ") + hand);
    }

    private void pot() {
        title("Into the pot");
        TextTable table = new TextTable("rllr").row("trimmed", "", "", "cooked");
        TextTable stirredIn = new TextTable("rll");
        Map<String, List<String>> methods = new LinkedHashMap<>();
        for (Plan.Ingredient ingredient : plan.pot()) {
            if (ingredient.stirredIn()) {
                stirredIn.row(Show.grams(ingredient.grams()), ingredient.label(), ingredient.measure());
                continue;
            }
            table.row(
                    Show.grams(ingredient.grams()),
                    ingredient.label(),
                    ingredient.measure(),
                    String.format(Locale.ROOT, "%.1f %%", 100 * ingredient.shareOfCookedMass()));
            methods.computeIfAbsent(ingredient.preparation(), key -> new ArrayList<>())
                    .add(ingredient.label());
        }
        text.append(table.render("  ", WIDTH));
        methods.forEach(
                (method, labels) -> text.append(Wrap.item(method + ": " + String.join("; ", labels), "  ", WIDTH)));
        if (plan.pot().stream().anyMatch(Plan.Ingredient::stirredIn)) {
            title("Stirred into the whole batch when it has cooled to warm; crush tablets to powder");
            text.append(stirredIn.render("  ", WIDTH));
        }
    }

    private void portions() {
        title("Into the bowls, " + plan.mealsPerDay() + (plan.mealsPerDay() == 1 ? " meal" : " meals") + " a day");
        TextTable table = new TextTable("ll");
        for (Plan.DogPlan dog : plan.dogs()) {
            table.row(dog.name(), meals(dog) + ", about " + dog.scoopPerMeal() + " of the mix a meal" + whenFed(dog));
            for (Plan.Addition addition : dog.additions()) {
                table.row("", "+ " + addition.label() + ": " + addition.dose() + ", " + when(dog, addition));
            }
        }
        text.append(table.render("  ", WIDTH));
    }

    /** Nothing for a dog that is there on all days. */
    private String whenFed(Plan.DogPlan dog) {
        if (dog.daysFed() == plan.days()) {
            return "";
        }
        return dog.daysFed() == 1
                ? ", on day " + dog.firstDay() + " of " + plan.days()
                : ", on days " + dog.firstDay() + " to " + (dog.firstDay() + dog.daysFed() - 1) + " of " + plan.days();
    }

    private static String meals(Plan.DogPlan dog) {
        List<Integer> grams = dog.potGramsPerMeal();
        boolean same = grams.stream().distinct().count() == 1;
        return same
                ? Show.grams(grams.get(0)) + " a meal"
                : String.join(
                                " + ",
                                grams.stream()
                                        .map(each -> String.format(Locale.ROOT, "%,d", each))
                                        .toList())
                        + " g";
    }

    private static String when(Plan.DogPlan dog, Plan.Addition addition) {
        return addition.onDays().size() == dog.daysFed()
                ? "once a day"
                : "on day" + (addition.onDays().size() == 1 ? " " : "s ")
                        + String.join(
                                ", ",
                                addition.onDays().stream().map(String::valueOf).toList());
    }

    private void kitchen() {
        Plan.Batch batch = plan.batch();
        title("Bags and freezer");
        text.append("  cooked batch: ")
                .append(Show.weight(batch.cookedGrams(), units))
                .append(" (")
                .append(Show.grams(batch.cookedGrams()))
                .append("), ")
                .append(Show.volume(batch.millilitres(), units))
                .append('\n');
        Integer loads = batch.potLoads();
        if (loads != null) {
            text.append("  pot: filled ").append(count(loads, "time")).append('\n');
        }
        int inFridge = batch.bags() - batch.bagsFrozen();
        double daysPerBag = Math.round(10.0 * plan.days() / batch.bags()) / 10.0;
        text.append("  ")
                .append(count(batch.bags(), "bag"))
                .append(" (")
                .append(batch.bag())
                .append("), ")
                .append(Show.grams(batch.gramsPerBag()))
                .append(" in each, one for ")
                .append(Show.number(daysPerBag))
                .append(daysPerBag == 1 ? " day" : " days")
                .append(" of all dogs\n  ")
                .append(inFridge)
                .append(inFridge == 1 ? " stays" : " stay")
                .append(" in the fridge for the first ")
                .append(count(batch.fridgeDays(), "day"))
                .append(", ")
                .append(batch.bagsFrozen())
                .append(batch.bagsFrozen() == 1 ? " goes" : " go")
                .append(" into the freezer\n");
        Double taken = batch.freezerMl();
        Double free = batch.freezerFreeMl();
        if (taken != null && free != null) {
            text.append("  freezer: ")
                    .append(Show.volume(taken, units))
                    .append(" taken of ")
                    .append(Show.volume(free, units))
                    .append(" free\n");
        }
        text.append("  left in the pot after all portions: ")
                .append(Show.grams(batch.spareGrams()))
                .append('\n');
    }

    private void cost() {
        title("Cost");
        String till = money(plan.cost().atTheTill()) + " at the till; "
                + money(plan.cost().ofTheBatch()) + " of it for this batch, the rest in packs that keep";
        text.append(Wrap.paragraph(till, "  ", WIDTH));
        TextTable table = new TextTable("lr");
        table.row("all dogs", money(plan.cost().perDay()) + " a day");
        plan.cost().perDogPerDay().forEach(dog -> table.row(dog.dog(), money(dog.perDay()) + " a day"));
        text.append(table.render("  ", WIDTH));
    }

    private void list(String title, List<?> sentences) {
        if (!sentences.isEmpty()) {
            title(title);
            sentences.forEach(sentence -> text.append(Wrap.item(sentence.toString(), "  ", WIDTH)));
        }
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private void title(String title) {
        text.append('\n').append(title).append('\n');
    }

    private String money(double amount) {
        return Show.money(amount, plan.currency());
    }

    private static String kcal(double kcal) {
        return String.format(Locale.ROOT, "%,.0f kcal", kcal);
    }
}
