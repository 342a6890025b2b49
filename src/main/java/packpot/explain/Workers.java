package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Does independent pieces of work on all cores. */
final class Workers implements AutoCloseable {
    private final ExecutorService pool =
            Executors.newFixedThreadPool(Math.max(1, Runtime.getRuntime().availableProcessors()), work -> {
                Thread thread = new Thread(work, "explain");
                thread.setDaemon(true);
                return thread;
            });

    /** The results in the order of the work. */
    <T> List<T> all(List<Callable<T>> work) {
        List<Future<T>> pending = new ArrayList<>();
        work.forEach(piece -> pending.add(pool.submit(piece)));
        List<T> results = new ArrayList<>();
        try {
            for (Future<T> each : pending) {
                results.add(each.get());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("was interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        }
        return results;
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
