package packpot.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import packpot.audit.Finding;
import packpot.horizon.BagPlan;
import packpot.horizon.HorizonPlan;
import packpot.household.Horizon;
import packpot.household.Household;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Sentence;

/** Several cook days for people, in 80 columns. */
public final class SessionsReport {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final double NOTICEABLE_GRAMS = 5;

    private final HorizonPlan plan;
    private final List<Finding> findings;
    private final Household household;
    private final UnitSystem units;
    private final Page page = new Page();

    private SessionsReport(HorizonPlan plan, List<Finding> findings) {
        this.plan = plan;
        this.findings = findings;
        this.household = plan.household();
        this.units = household.units();
    }

    /**
     * The text.
     *
     * @param findings what the audit of all batches together found wrong; empty when nothing is
     */
    public static String text(HorizonPlan plan, List<Finding> findings) {
        return new SessionsReport(plan, findings).write();
    }

    /**
     * One batch in full.
     *
     * @param number of the batch, the first being 1
     */
    public static String batch(HorizonPlan plan, int number) {
        HorizonPlan.Session session = plan.sessions().get(number - 1);
        String aim =
                "Batch " + number + " of " + plan.sessions().size() + ", planned for the least cost of all together";
        return TextReport.of(session.plan(), session.verdict(), plan.household().units(), aim);
    }

    /** For programs; the fields are described in models/sessions.schema.json. */
    public static String json(HorizonPlan plan, FeedingCalendar calendar, List<Finding> findings) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("packpotSessions", JsonReport.FORMAT);
        data.put("checkPassed", findings.isEmpty());
        data.put("findings", findings);
        data.put("household", plan.household().name());
        data.put("start", plan.household().start());
        data.put("days", plan.horizon().days());
        data.put("currency", plan.household().currency());
        Map<String, Object> cost = new LinkedHashMap<>();
        cost.put("atTheTill", plan.cost().atTheTill());
        cost.put("leftWorth", plan.cost().leftWorth());
        cost.put("cookDays", plan.cost().cookDays());
        cost.put("total", plan.cost().total());
        cost.put("noPlanBelow", plan.cost().noPlanBelow());
        cost.put("gapShare", plan.cost().gapShare());
        data.put("cost", cost);
        data.put("bags", plan.sessions().stream().map(HorizonPlan.Session::bags).toList());
        data.put(
                "batches",
                plan.sessions().stream().map(HorizonPlan.Session::plan).toList());
        data.put("calendar", calendar);
        data.put("notes", plan.notes());
        data.put("disclaimer", Disclaimer.TEXT);
        return JsonReport.of(data);
    }

    private String write() {
        head();
        sessions();
        bags();
        portions();
        cost();
        shopping();
        page.items("To know", plan.notes());
        page.items("Taken for granted, since the scenario does not say", household.defaults());
        page.items("Cautions", cautions());
        return page.raw("\n").paragraph(Disclaimer.TEXT).toString();
    }

    private void head() {
        LocalDate start = household.start();
        page.heading(household.name(), 1)
                .paragraph("Fed from " + LONG.format(start) + " to "
                        + LONG.format(start.plusDays(plan.horizon().days() - 1L)) + ", "
                        + count(plan.sessions().size(), "cook day"));
        if (findings.isEmpty()) {
            page.paragraph("Checked: every batch meets every minimum and maximum, every dog is fed every day, and what"
                    + " is bought, used and left adds up");
        } else {
            page.paragraph("FAILED THE CHECK, do not follow it:");
            findings.forEach(finding -> page.item(finding.toString()));
        }
        HorizonPlan.Cost cost = plan.cost();
        page.paragraph(String.format(
                Locale.ROOT,
                "%s in all, %s a day; proved: no choice of batches costs more than %.1f %% less",
                money(cost.total()),
                money(cost.total() / plan.days()),
                100 * cost.gapShare()));
    }

    private void sessions() {
        page.title("Cook days");
        TextTable table = new TextTable("lrrrrl").row("", "feeds", "at the till", "cooked", "bags", "mostly");
        for (HorizonPlan.Session session : plan.sessions()) {
            Plan batch = session.plan();
            table.row(
                    SHORT.format(session.date()),
                    count(session.interval().days(), "day"),
                    money(batch.cost().atTheTill()),
                    Show.weight(batch.batch().cookedGrams(), units),
                    String.valueOf(batch.batch().bags()),
                    mostly(batch));
        }
        page.table(table);
    }

    private static String mostly(Plan batch) {
        return MainFoods.of(batch).stream()
                .map(food -> food.label().replaceAll(",.*", ""))
                .collect(Collectors.joining(", "));
    }

    private void bags() {
        int shared = 0;
        int perDog = 0;
        boolean fits = true;
        for (HorizonPlan.Session session : plan.sessions()) {
            BagPlan bags = session.bags();
            shared += bags.shared();
            perDog += bags.perDog();
            fits &= bags.perDogFits(
                    session.interval().days(), household.kitchen().fridgeDays());
        }
        String bag = household.kitchen().bagName();
        page.raw("\n")
                .paragraph("Bags (" + bag + "): " + shared
                        + " in all, each for all dogs, as planned here; a row of bags for"
                        + " each dog would take " + perDog
                        + (fits ? ", and the freezer holds them." : ", more than the freezer holds."));
    }

    /** Grams of the pot a day, batch by batch. */
    private void portions() {
        page.title("Grams of the mix a day, from each cook day on; the plan of a day has the additions to the bowls");
        List<String> names = plan.sessions().stream()
                .flatMap(session -> session.plan().dogs().stream())
                .map(Plan.DogPlan::name)
                .distinct()
                .toList();
        for (int from = 0; from < names.size(); from += 5) {
            List<String> some = names.subList(from, Math.min(names.size(), from + 5));
            TextTable table = new TextTable("l" + "r".repeat(some.size()));
            table.row(row("", some));
            for (HorizonPlan.Session session : plan.sessions()) {
                table.row(row(
                        SHORT.format(session.date()),
                        some.stream().map(name -> portion(session.plan(), name)).toList()));
            }
            page.table(table);
        }
    }

    private static String[] row(String first, List<String> rest) {
        String[] row = new String[rest.size() + 1];
        row[0] = first;
        for (int i = 0; i < rest.size(); i++) {
            row[i + 1] = rest.get(i);
        }
        return row;
    }

    private static String portion(Plan batch, String name) {
        return batch.dogs().stream()
                .filter(dog -> dog.name().equals(name))
                .map(dog -> Show.number(dog.potGramsPerDay()))
                .findFirst()
                .orElse("-");
    }

    private void cost() {
        HorizonPlan.Cost cost = plan.cost();
        page.title("Cost");
        TextTable table = new TextTable("lr").row("at the till, all shopping days", money(cost.atTheTill()));
        if (cost.leftWorth() > 0) {
            table.row("less what bought food left at the end is worth", "-" + money(cost.leftWorth()));
        }
        if (cost.cookDays() > 0) {
            table.row(
                    count(plan.sessions().size(), "cook day") + " at "
                            + money(plan.horizon().pricePerSession()),
                    money(cost.cookDays()));
        }
        page.table(table.row("in all", money(cost.total())));
        if (plan.horizon().choice() != Horizon.Choice.FIXED) {
            page.indented("Cook days were chosen: "
                    + (plan.horizon().choice() == Horizon.Choice.FEWEST
                            ? "as few as can be, and of these the cheapest"
                            : "the cheapest, with the price of a cook day"));
        }
    }

    private void shopping() {
        for (HorizonPlan.Session session : plan.sessions()) {
            Plan batch = session.plan();
            page.title("To buy for " + SHORT.format(session.date()) + ", "
                    + money(batch.cost().atTheTill()));
            TextTable table = new TextTable("rrl");
            for (Plan.Purchase line : batch.shopping()) {
                if (line.pays() > 0) {
                    String left = line.leftOverGrams() > NOTICEABLE_GRAMS
                            ? "; " + Show.weight(line.leftOverGrams(), units) + " over"
                            : "";
                    String hand = line.fromHandGrams() > NOTICEABLE_GRAMS
                            ? "; " + Show.weight(line.fromHandGrams(), units) + " from the house"
                            : "";
                    table.row(
                            line.packs() == null ? Show.weight(line.buyGramsAsBought(), units) : line.packs() + " x",
                            money(line.pays()),
                            line.label() + (line.packs() == null ? "" : ", " + line.pack()) + hand + left);
                }
            }
            page.table(table);
            String fromHouse = batch.shopping().stream()
                    .filter(line -> line.pays() <= 0)
                    .map(line -> line.label() + " " + Show.weight(line.usedGrams(), units))
                    .collect(Collectors.joining("; "));
            if (!fromHouse.isEmpty()) {
                page.indented("Out of the house: " + fromHouse + ".");
            }
        }
    }

    private List<Sentence> cautions() {
        return plan.sessions().stream()
                .flatMap(session -> session.plan().cautions().stream())
                .distinct()
                .toList();
    }

    private String money(double amount) {
        return Show.money(amount, household.currency());
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
