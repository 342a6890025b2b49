package packpot.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.IntConsumer;

/** Independent pieces of work on all cores. */
final class Parallel {

    private Parallel() {}

    /** Does the work for each input; the results are in the order of the inputs. */
    static <A, B> List<B> map(List<A> inputs, Function<A, B> work) {
        return map(inputs, work, done -> {});
    }

    /**
     * Does the work for each input, on as many threads as there are cores.
     *
     * @param done is told how many are done, from any thread
     * @return the results in the order of the inputs
     */
    static <A, B> List<B> map(List<A> inputs, Function<A, B> work, IntConsumer done) {
        int threads = Math.max(1, Math.min(inputs.size(), Runtime.getRuntime().availableProcessors()));
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "packpot-work");
            thread.setDaemon(true);
            return thread;
        });
        try {
            AtomicInteger count = new AtomicInteger();
            List<Future<B>> futures = new ArrayList<>();
            for (A input : inputs) {
                futures.add(pool.submit(() -> {
                    B result = work.apply(input);
                    done.accept(count.incrementAndGet());
                    return result;
                }));
            }
            List<B> results = new ArrayList<>();
            for (Future<B> future : futures) {
                results.add(future.get());
            }
            return results;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the work was interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException("the work failed", e);
        } finally {
            pool.shutdownNow();
        }
    }
}
