package packpot.household;

import java.util.ArrayList;
import java.util.List;

/** What reading a scenario has to tell beside its faults. */
final class Notes {
    final List<String> defaults = new ArrayList<>();
    final List<String> cautions = new ArrayList<>();

    void filled(String sentence) {
        defaults.add(sentence);
    }

    void caution(String sentence) {
        cautions.add(sentence);
    }
}
