package packpot.page;

import java.util.HashMap;
import java.util.Map;
import packpot.search.Search;

/** What is being reckoned for each open page: its newest question takes the place of the one before it. */
final class Work {

    /** One question, with a solver of its own, so that ending it ends no other. */
    static final class Job {
        private final Search solver = new Search();
        private volatile String now = "";
        private volatile boolean cancelled;

        Search solver() {
            return solver;
        }

        /** What is going on, in a few words. */
        String now() {
            return now;
        }

        void now(String words) {
            now = words;
        }

        boolean isCancelled() {
            return cancelled;
        }

        void cancel() {
            cancelled = true;
            solver.cancel();
        }
    }

    private final Map<String, Job> newest = new HashMap<>();

    /** Begins a page's newest question and ends the one before. */
    Job begin(String page) {
        Job job = new Job();
        synchronized (newest) {
            Job before = newest.put(page, job);
            if (before != null) {
                before.cancel();
            }
        }
        return job;
    }

    void end(String page, Job job) {
        synchronized (newest) {
            newest.remove(page, job);
        }
    }

    /** Ends what a page waits for. */
    void cancel(String page) {
        synchronized (newest) {
            Job job = newest.remove(page);
            if (job != null) {
                job.cancel();
            }
        }
    }

    void cancelAll() {
        synchronized (newest) {
            newest.values().forEach(Job::cancel);
            newest.clear();
        }
    }
}
