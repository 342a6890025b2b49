package packpot.household;

import java.util.ArrayList;
import java.util.List;
import packpot.words.Sentence;

/** What reading a scenario has to tell beside its faults. */
final class Notes {
    final List<Sentence> defaults = new ArrayList<>();
    final List<Sentence> cautions = new ArrayList<>();

    void filled(String key, Object... values) {
        defaults.add(Sentence.of(key, values));
    }

    void caution(String key, Object... values) {
        cautions.add(Sentence.of(key, values));
    }
}
