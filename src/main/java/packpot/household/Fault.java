package packpot.household;

/**
 * One mistake in a scenario, told to the person who made it.
 *
 * @param path where, such as "dogs[1].weight"
 * @param message what was read, what was expected, and what to do
 */
public record Fault(String path, String message) {
    @Override
    public String toString() {
        return path.isEmpty() ? message : path + ": " + message;
    }
}
