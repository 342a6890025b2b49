package packpot.report;

import java.util.List;
import java.util.Locale;
import packpot.explain.Clash;
import packpot.explain.RecipeMend;
import packpot.household.Household;
import packpot.units.Show;
import packpot.words.Sentence;

/** How a recipe can be mended: each way with its foods and bowls, or with what stands in it. */
final class RecipeMendsText {
    private final List<RecipeMend> mends;
    private final Household household;
    private final double recipeCostPerDay;
    private final double bandShare;

    /**
     * A text.
     *
     * @param recipeCostPerDay money for the recipe as it stands, scaled to the energy that is needed
     * @param bandShare of the cheapest recipe of its character
     */
    RecipeMendsText(List<RecipeMend> mends, Household household, double recipeCostPerDay, double bandShare) {
        this.mends = mends;
        this.household = household;
        this.recipeCostPerDay = recipeCostPerDay;
        this.bandShare = bandShare;
    }

    void write(Page page) {
        for (RecipeMend mend : mends) {
            page.title(words(mend.way()));
            if (mend.outcome() instanceof RecipeMend.Outcome.Planned planned) {
                planned(page, mend.way(), planned);
            } else if (mend.outcome() instanceof RecipeMend.Outcome.None none) {
                page.indented("No: " + none.reason() + ".");
                Clash clash = none.clash();
                if (clash != null) {
                    page.indented("What stands in the way: " + ClashText.words(clash));
                    page.raw(ClashText.items(clash, "  "));
                }
            }
        }
        if (!mends.isEmpty()) {
            page.raw("\n");
            page.paragraph(
                    "The mends use the recipe's foods and supplements. They give no more supplements than a plan of this"
                            + " household may have, or than the recipe has itself; those that it has stay in the"
                            + " first and do not count."
                            + " Where supplements alone do not do, the first"
                            + " may take as little oil as will do (with the recipe's own within the household's share of it); the"
                            + " second, if that makes the change smaller, one or two foods of the pantry. The second"
                            + " is sought among all supplements of the catalogue, the others look there only when the"
                            + " pantry's do not do. They keep "
                            + Show.number(100 * household.rules().margin())
                            + " % above every minimum (a recipe that is good already need not). How the pot looks and"
                            + " how many foods it has binds the first two not at all, the third as far as the recipe"
                            + " itself keeps it; caps that a food carries for the dog's sake bind all three. Pot, bags"
                            + " and freezer of the household hold, its budget does not. Each"
                            + " mend passed the audit that every plan passes. \"--show 2\" prints the second in full.");
            page.items("To mind with every mend", commonCautions());
        }
    }

    private List<RecipeMend.Outcome.Planned> planned() {
        return mends.stream()
                .map(RecipeMend::outcome)
                .filter(RecipeMend.Outcome.Planned.class::isInstance)
                .map(RecipeMend.Outcome.Planned.class::cast)
                .toList();
    }

    /** What is to be minded about one mend: about its foods, and whatever else not every mend needs. */
    private List<Sentence> ownCautions(RecipeMend.Outcome.Planned planned) {
        List<Sentence> common = commonCautions();
        return planned.plan().cautions().stream()
                .filter(caution -> !common.contains(caution))
                .toList();
    }

    /** What is to be minded about dogs and kitchen, whatever the mend. */
    private List<Sentence> commonCautions() {
        List<RecipeMend.Outcome.Planned> all = planned();
        return all.isEmpty()
                ? List.of()
                : all.get(0).plan().cautions().stream()
                        .filter(caution -> all.stream()
                                .allMatch(each -> each.plan().cautions().contains(caution)
                                        && each.plan().shopping().stream()
                                                .noneMatch(line ->
                                                        caution.toString().startsWith(line.label() + ": "))))
                        .toList();
    }

    String words(RecipeMend.Way way) {
        return words(way, bandShare);
    }

    static String words(RecipeMend.Way way, double bandShare) {
        return switch (way) {
            case ADDITIONS_ONLY -> "Mend 1: additions only, at least cost; the pot's proportions stay";
            case SMALLEST_CHANGE -> "Mend 2: the smallest change of the amounts";
            case CHEAPEST_ALIKE ->
                "Mend 3: the cheapest with the same foods, shares within " + RecipeFigures.percent(bandShare)
                        + " of theirs";
        };
    }

    private void planned(Page page, RecipeMend.Way way, RecipeMend.Outcome.Planned planned) {
        page.indented(scaled(way, planned));
        MendedPlanText.pot(page, planned);
        MendedPlanText.bowls(page, planned.plan());
        page.indented(Show.money(planned.costPerDay(), planned.plan().currency()) + " a day for what is used, by"
                + " weight; the recipe as it stands, scaled to the same energy, "
                + Show.money(recipeCostPerDay, planned.plan().currency()) + ". At the till, in whole packs: "
                + Show.money(planned.plan().cost().atTheTill(), planned.plan().currency()) + ".");
        MendedPlanText.nearestLimits(page, planned.verdict().dogs());
        ownCautions(planned).forEach(caution -> page.item("Mind: " + caution));
        planned.guessed().forEach(guess -> page.item("to buy: " + guess));
        planned.left().forEach(left -> page.item("the recipe passes it, so it does not bind: " + left));
    }

    private String scaled(RecipeMend.Way way, RecipeMend.Outcome.Planned planned) {
        String size = Math.abs(planned.scale() - 1) < RecipeFigures.NO_CHANGE
                ? "The batch keeps its size"
                : String.format(
                        Locale.ROOT,
                        "%s times %.2f, to bring the energy that is needed",
                        way == RecipeMend.Way.ADDITIONS_ONLY ? "All foods" : "The batch",
                        planned.scale());
        return size
                + switch (way) {
                    case ADDITIONS_ONLY -> ".";
                    case SMALLEST_CHANGE ->
                        planned.distance() < RecipeFigures.NO_CHANGE
                                ? "; beside that no food changes."
                                : "; beside that foods change by " + RecipeFigures.percent(planned.distance())
                                        + " in all, each counted by its share of the pot.";
                    case CHEAPEST_ALIKE -> "; changes are beside that.";
                };
    }
}
