package packpot.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.dog.Course;
import packpot.dog.Dog;
import packpot.household.Household;
import packpot.plan.Plan;

/** The audit passes what is right and notices every error that is planted into a plan. */
class PlanAuditTest {
    /** Figures and lists that the audit has nothing to hold against, each with the reason. */
    private static final Map<String, String> NO_CLAIM = Map.of(
            "marginShare", "a wish of the planning; plans are held to the published limits themselves",
            "dogs.additions.onDays", "of doses that are spread, one day of the batch is as good as another",
            "proof.solveSeconds", "a duration of this run, which cannot be reckoned again",
            "proof.provedOptimal", "the solver's word, as is the bound below",
            "proof.cost", "the cost before the kitchen's rounding, whose amounts the plan does not hold",
            "proof.noPlanBelow", "a bound that only a solver can prove",
            "defaults", "sentences for people",
            "cautions", "sentences for people",
            "atTheirLimit", "sentences for people about the shape that the audit checks by itself");

    private static final String TINY = "tiny-freezer";

    /** All but the smallest, which has tests of its own. */
    static Stream<Demo.Planned> demos() {
        return Demo.files().stream()
                .filter(file -> !file.equals(Demo.file(TINY)))
                .map(Demo::planned);
    }

    @Test
    void passesTheSmallestPlan() {
        passesAGoodPlan(Demo.planned(TINY));
    }

    @Test
    void noticesEveryPlantedErrorOfTheSmallestPlan() {
        noticesEveryPlantedError(Demo.planned(TINY));
    }

    @Tag("demos")
    @ParameterizedTest
    @MethodSource("demos")
    void passesAGoodPlan(Demo.Planned demo) {
        assertThat(demo.verdict().findings()).isEmpty();
        assertThat(demo.verdict().dogs()).hasSameSizeAs(demo.household().dogs());
    }

    @Tag("demos")
    @ParameterizedTest
    @MethodSource("demos")
    void noticesEveryPlantedError(Demo.Planned demo) {
        List<String> unnoticed = new ArrayList<>();
        PlantedErrors.in(demo.plan()).forEach((place, plan) -> {
            if (!exempt(place) && check(plan, demo.household()).passed()) {
                unnoticed.add(place);
            }
        });
        assertThat(unnoticed).isEmpty();
    }

    /** The same for a dog that is there on days 3 to 9 of 14 alone. */
    @Tag("demos")
    @Test
    void noticesEveryPlantedErrorWhereADogComesAndLeaves() {
        Household all = Demo.planned("three-adults").household();
        List<Dog> dogs = all.dogs().stream()
                .map(dog ->
                        dog.name().equals("Moss") ? dog.withCourse(new Course(List.of(), null, null, 2, 9, null)) : dog)
                .toList();
        Demo.Planned demo = Demo.plan(all.withDogs(dogs));
        assertThat(demo.verdict().findings()).isEmpty();
        noticesEveryPlantedError(demo);
    }

    @Tag("demos")
    @Test
    void everyExemptionNamesAFieldOfThePlan() {
        TreeSet<String> fields = new TreeSet<>();
        demos().forEach(demo -> PlantedErrors.in(demo.plan()).keySet().forEach(place -> fields.add(field(place))));
        assertThat(fields).containsAll(NO_CLAIM.keySet());
    }

    /** "dogs[2].additions[0].gramsPerDose up" is about "dogs.additions.gramsPerDose". */
    private static String field(String place) {
        return place.replaceAll("\\[\\d+]", "").replaceAll(" .*", "");
    }

    /** A list of days is held against the doses that are used; only which days they are is exempt. */
    private static boolean exempt(String place) {
        return NO_CLAIM.containsKey(field(place))
                && !(place.contains("onDays") && (place.endsWith("twice") || place.endsWith("left out")));
    }

    private static Verdict check(Plan plan, Household household) {
        return PlanAudit.check(plan, household, Demo.knowledge());
    }
}
