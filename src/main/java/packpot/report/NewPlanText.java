package packpot.report;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import packpot.audit.DogAudit;
import packpot.explain.Planner;
import packpot.household.PantryItem;
import packpot.plan.Plan;
import packpot.units.Show;
import packpot.words.Sentence;

/** What a new plan must be told with that the old one was not: cautions, prices, what was taken for granted, limits. */
final class NewPlanText {

    private NewPlanText() {}

    static void write(Page page, Planner.Result.Planned old, PlansBeside.Column column) {
        Planner.Result.Planned found = column.plan().planned();
        Plan plan = found.plan();
        String letter = column.letter();
        page.items(letter + ", cautions that are new", added(old.plan().cautions(), plan.cautions()));
        page.items(letter + ", at their limit, and so what the cost hangs on", plan.atTheirLimit());
        page.items(letter + ", taken for granted anew", added(old.plan().defaults(), plan.defaults()));
        page.items(letter + ", other packs", packs(old, found));
        Set<String> known = old.plan().dogs().stream().map(Plan.DogPlan::name).collect(Collectors.toSet());
        for (DogAudit dog : found.verdict().dogs()) {
            if (!known.contains(dog.dog())) {
                page.raw("\n").raw(letter + ", ").raw(NutrientText.table(dog));
            }
        }
    }

    private static List<Sentence> added(List<Sentence> before, List<Sentence> after) {
        return after.stream().filter(each -> !before.contains(each)).toList();
    }

    /** A pack of another size keeps its price where no other is given, which a person may not mean. */
    private static List<String> packs(Planner.Result.Planned old, Planner.Result.Planned found) {
        return found.household().pantry().stream()
                .flatMap(now -> old.household().pantry().stream()
                        .filter(was -> was.food().id().equals(now.food().id())
                                && !was.isLoose()
                                && !now.isLoose()
                                && !was.packName().equals(now.packName()))
                        .map(was -> now.food().label() + ": " + price(now, found) + ", was " + price(was, old)))
                .toList();
    }

    private static String price(PantryItem item, Planner.Result.Planned planned) {
        return Show.money(item.packPrice(), planned.plan().currency()) + " for " + item.packName();
    }
}
