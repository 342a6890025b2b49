package packpot.audit;

/**
 * Something that the audit found wrong with a plan.
 *
 * @param where the dog, food or part of the kitchen
 * @param message what was reckoned and what was expected
 */
public record Finding(String where, String message) {
    @Override
    public String toString() {
        return where + ": " + message;
    }
}
