package packpot.dog;

import java.util.List;
import java.util.Optional;

/**
 * How a dog goes over from another food to the batch. Days are counted from the first of the plan, which is 0.
 *
 * @param from the other food, as its owner calls it, such as "dry food"
 * @param newShares share of the batch in what it is fed, day by day; above 0 and never falling, 1 from then on
 */
public record Transition(String from, List<Double> newShares) {
    public Transition {
        newShares = List.copyOf(newShares);
    }

    /** Share of the batch in what the dog is fed on a day. */
    public double shareOn(int day) {
        return day < newShares.size() ? newShares.get(day) : 1;
    }

    /** What is still to come of it after so many days; empty when it is over by then. */
    Optional<Transition> from(int day) {
        return day >= newShares.size()
                ? Optional.empty()
                : Optional.of(new Transition(from, newShares.subList(day, newShares.size())));
    }

    /** The first day on which it is fed the batch alone. */
    public int fullDay() {
        int day = 0;
        while (shareOn(day) < 1) {
            day++;
        }
        return day;
    }
}
