package packpot.horizon;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import packpot.dog.Dog;
import packpot.household.HorizonScenario;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.plan.Plan;
import packpot.units.Show;

/** Dogs whose needs move so much within a batch that the same portion every day would not do. */
final class MovingNeeds {
    /** From here on a dog that is fed the average is fed noticeably too much at one end and too little at the other. */
    private static final double NOTICEABLE_SHARE = 0.1;

    private MovingNeeds() {}

    /** One sentence for each such dog and batch: with which portion to begin and to end. */
    static List<String> notes(HorizonScenario scenario, Knowledge knowledge, List<HorizonPlan.Session> sessions) {
        Household household = scenario.household();
        List<String> notes = new ArrayList<>();
        for (HorizonPlan.Session session : sessions) {
            for (Plan.DogPlan portion : session.plan().dogs()) {
                Dog dog = household.allDogs().stream()
                        .filter(each -> each.name().equals(portion.name()))
                        .findFirst()
                        .orElseThrow();
                int first = session.interval().day() + portion.firstDay() - 1;
                List<Double> kcal = IntStream.range(first, first + portion.daysFed())
                        .mapToObj(day -> kcal(knowledge.overTime().on(dog, day).orElseThrow(), household, knowledge))
                        .toList();
                double begins = kcal.get(0);
                double ends = kcal.get(kcal.size() - 1);
                if (Math.abs(ends - begins) > NOTICEABLE_SHARE * portion.batchKcalPerDay()) {
                    notes.add(String.format(
                            "%s needs %s kcal a day when the batch of %s begins and %s when it ends: begin with %s of the"
                                    + " mix a day and end with %s, a step each week; the portion that is printed is the"
                                    + " average",
                            dog.name(),
                            Show.number(Math.rint(begins)),
                            session.date(),
                            Show.number(Math.rint(ends)),
                            grams(portion, begins),
                            grams(portion, ends)));
                }
            }
        }
        return notes;
    }

    private static double kcal(Dog dog, Household household, Knowledge knowledge) {
        return knowledge
                        .energy()
                        .need(dog, household.maintenance(), household.growth())
                        .kcalPerDay()
                - dog.otherKcalPerDay();
    }

    private static String grams(Plan.DogPlan portion, double kcal) {
        return Show.grams(Math.rint(portion.potGramsPerDay() * kcal / portion.batchKcalPerDay()));
    }
}
