package packpot.household;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Where changes took hold so far; two changes of one place contradict each other. */
final class Places {
    /** Stands for the whole subject: nothing else of it can be changed beside this. */
    static final String ALL = "*";

    private record Taken(String subject, String aspect, String words) {}

    private final List<Fault> faults;
    private final List<Taken> taken = new ArrayList<>();
    private String words = "";

    Places(List<Fault> faults) {
        this.faults = faults;
    }

    /** From now on this change is spoken of. */
    void begin(Change change) {
        words = change.words();
    }

    void fault(String message) {
        faults.add(new Fault("\"" + words + "\"", message));
    }

    /** Takes a place; false, and a fault, when another change has it. */
    boolean take(String subject, String aspect) {
        String plain = subject.toLowerCase(Locale.ROOT);
        Taken other = against(plain, aspect);
        if (other != null && other.words().equalsIgnoreCase(words)) {
            fault("is there twice; give it once");
            return false;
        }
        if (other != null) {
            fault("contradicts \"" + other.words() + "\"; give one of the two, or ask for both as alternatives");
            return false;
        }
        taken.add(new Taken(plain, aspect, words));
        return true;
    }

    private @Nullable Taken against(String subject, String aspect) {
        for (Taken each : taken) {
            boolean sameAspect = each.aspect().equals(aspect) || each.aspect().equals(ALL) || aspect.equals(ALL);
            if (each.subject().equals(subject) && sameAspect) {
                return each;
            }
        }
        return null;
    }
}
