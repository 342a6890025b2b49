package packpot;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Copies of records in which one part is another, however deep it lies. */
public final class Records {
    private Records() {}

    /**
     * A copy.
     *
     * @param place such as "dogs[0].additions[1].gramsPerDose"
     */
    @SuppressWarnings("unchecked")
    public static <T extends Record> T with(T whole, String place, @Nullable Object part) {
        return (T) changed(whole, steps(place), part);
    }

    /** What lies at a place. */
    public static @Nullable Object at(Object whole, String place) {
        Object at = whole;
        for (String step : steps(place)) {
            at = at instanceof List<?> list ? list.get(Integer.parseInt(step)) : parts((Record) at)[index(at, step)];
        }
        return at;
    }

    /** The figure at a place. */
    public static double number(Object whole, String place) {
        return ((Number) at(whole, place)).doubleValue();
    }

    /** A record's parts in order. */
    public static Object[] parts(Record whole) {
        return Arrays.stream(whole.getClass().getRecordComponents())
                .map(component -> {
                    try {
                        return component.getAccessor().invoke(whole);
                    } catch (ReflectiveOperationException e) {
                        throw new AssertionError(e);
                    }
                })
                .toArray();
    }

    /** A record of the same kind with other parts. */
    public static Object rebuilt(Record whole, Object[] parts) {
        try {
            Class<?>[] types = Arrays.stream(whole.getClass().getRecordComponents())
                    .map(RecordComponent::getType)
                    .toArray(Class<?>[]::new);
            return whole.getClass().getDeclaredConstructor(types).newInstance(parts);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    private static List<String> steps(String place) {
        return List.of(place.replace("]", "").split("[.\\[]"));
    }

    private static @Nullable Object changed(Object whole, List<String> steps, @Nullable Object part) {
        if (steps.isEmpty()) {
            return part;
        }
        String step = steps.get(0);
        List<String> rest = steps.subList(1, steps.size());
        if (whole instanceof List<?> list) {
            List<Object> copy = new ArrayList<>(list);
            int at = Integer.parseInt(step);
            copy.set(at, changed(copy.get(at), rest, part));
            return copy;
        }
        Object[] parts = parts((Record) whole);
        int at = index(whole, step);
        parts[at] = changed(parts[at], rest, part);
        return rebuilt((Record) whole, parts);
    }

    private static int index(Object whole, String name) {
        RecordComponent[] components = whole.getClass().getRecordComponents();
        for (int i = 0; i < components.length; i++) {
            if (components[i].getName().equals(name)) {
                return i;
            }
        }
        throw new AssertionError(whole.getClass().getSimpleName() + " has no " + name);
    }
}
