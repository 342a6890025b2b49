package packpot.audit;

import java.util.List;
import java.util.function.Predicate;
import packpot.Demo;
import packpot.Records;
import packpot.household.Household;
import packpot.household.PantryItem;
import packpot.plan.Plan;

/** The smallest demo, planned once in a process, in which tests plant errors and move limits. */
final class TinyPlan {
    private static final Demo.Planned TINY = Demo.planned("tiny-freezer");
    static final Household HOUSEHOLD = TINY.household();
    static final Plan PLAN = TINY.plan();

    static final String CHICKEN = "chicken-thigh-meat-skin-raw";
    static final String CALCIUM = "calcium-carbonate";
    static final String SPINACH = "spinach-frozen";
    static final String VITAMIN_E = "vitamin-e-oil-400iu-per-g";

    private TinyPlan() {}

    static Verdict verdict(Plan plan, Household household) {
        return PlanAudit.check(plan, household, Demo.knowledge());
    }

    /** Everything that the audit finds, as it is told. */
    static List<String> findings(Plan plan, Household household) {
        return verdict(plan, household).findings().stream()
                .map(Finding::toString)
                .toList();
    }

    static List<String> findings(Household household) {
        return findings(PLAN, household);
    }

    static List<String> findings(Plan plan) {
        return findings(plan, HOUSEHOLD);
    }

    /** The plan with another figure, list or word at a place. */
    static Plan plan(String place, Object part) {
        return Records.with(PLAN, place, part);
    }

    /** The household with another figure, list or word at a place. */
    static Household household(String place, Object part) {
        return Records.with(HOUSEHOLD, place, part);
    }

    /** Where a food stands in the pantry, such as "pantry[3]". */
    static String item(String food) {
        return "pantry[" + index(HOUSEHOLD.pantry(), item -> item.food().id().equals(food)) + "]";
    }

    static PantryItem pantry(String food) {
        return (PantryItem) Records.at(HOUSEHOLD, item(food));
    }

    static String pot(String food) {
        return "pot[" + index(PLAN.pot(), each -> each.food().equals(food)) + "]";
    }

    static String line(String food) {
        return "shopping[" + index(PLAN.shopping(), each -> each.food().equals(food)) + "]";
    }

    static double number(String place) {
        return Records.number(PLAN, place);
    }

    private static <T> int index(List<T> list, Predicate<T> is) {
        for (int i = 0; i < list.size(); i++) {
            if (is.test(list.get(i))) {
                return i;
            }
        }
        throw new AssertionError("there is no such line");
    }
}
