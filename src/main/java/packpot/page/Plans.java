package packpot.page;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.explain.Planner;

/** The plans of the last scenarios that were asked about, by the hash of the scenario's text; all passed the audit. */
final class Plans {
    private static final int MOST = 40;

    private final Map<String, Planner.Searched> newest = new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Planner.Searched> eldest) {
            return size() > MOST;
        }
    };

    private Planner.@Nullable Searched last;

    synchronized Optional<Planner.Searched> of(String hash) {
        return Optional.ofNullable(newest.get(hash));
    }

    /** The one that was put last. */
    synchronized Optional<Planner.Searched> last() {
        return Optional.ofNullable(last);
    }

    synchronized void put(String hash, Planner.Searched searched) {
        newest.put(hash, searched);
        last = searched;
    }
}
