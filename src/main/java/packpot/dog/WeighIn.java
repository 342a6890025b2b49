package packpot.dog;

/**
 * A weight that was read off a scale.
 *
 * @param day days from the first day of the plan; 0 on that day, below zero before it
 * @param kg body weight
 */
public record WeighIn(int day, double kg) {

    public WeighIn {
        if (day > 0 || !(kg > 0)) {
            throw new IllegalArgumentException("a weigh-in of " + kg + " kg on day " + day);
        }
    }
}
