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
        return visible(path.isEmpty() ? message : path + ": " + message);
    }

    /** A text with its control characters named: what was read comes back to a terminal, and may not steer it. */
    public static String visible(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT) {
                shown.append(String.format("<U+%04X>", c));
            } else {
                shown.appendCodePoint(c);
            }
        });
        return shown.toString();
    }
}
