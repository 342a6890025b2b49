package packpot.page;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import packpot.explain.Planner;

/** The plans of the last scenarios that were asked about, by the hash of the scenario's text. */
final class Plans {
    private static final int MOST = 40;

    private final Map<String, Planner.Result.Planned> newest = new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Planner.Result.Planned> eldest) {
            return size() > MOST;
        }
    };

    synchronized Optional<Planner.Result.Planned> of(String hash) {
        return Optional.ofNullable(newest.get(hash));
    }

    synchronized void put(String hash, Planner.Result.Planned planned) {
        newest.put(hash, planned);
    }
}
