package packpot.household;

import java.util.List;

/** A scenario cannot be used; holds every fault of the file. */
public final class ScenarioException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    public ScenarioException(String file, List<Fault> faults) {
        super(message(file, once(faults)));
        this.faults = once(faults);
    }

    /** A field that several readers look at is told once. */
    private static List<Fault> once(List<Fault> faults) {
        return faults.stream().distinct().toList();
    }

    private static String message(String file, List<Fault> faults) {
        StringBuilder text = new StringBuilder(Fault.visible(file))
                .append(faults.size() == 1 ? " has a fault:" : " has " + faults.size() + " faults:");
        faults.forEach(fault -> text.append("\n  ").append(fault));
        return text.toString();
    }

    public List<Fault> faults() {
        return faults;
    }
}
