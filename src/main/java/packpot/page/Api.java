package packpot.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelFiles;
import packpot.explain.Planner;
import packpot.food.Food;
import packpot.food.FoodEnergy;
import packpot.household.Knowledge;
import packpot.sheets.PdfFile;
import packpot.solver.CancelledException;
import packpot.words.Texts;

/** What the page can ask: files, plans and sheets. Plans are made off the threads that answer, so that they can be ended. */
final class Api {
    /** Two scenarios of the largest size that is read. */
    static final int MOST_BYTES = 2 * ScenarioFolder.MOST_BYTES + 100_000;

    private static final long BEAT_MILLISECONDS = 250;

    private final ScenarioFolder folder;
    private final Knowledge knowledge;
    private final Answers answers;
    private final Work work = new Work();
    private final ExecutorService solving = Executors.newCachedThreadPool(task -> {
        Thread thread = new Thread(task, "packpot-solving");
        thread.setDaemon(true);
        return thread;
    });

    Api(ScenarioFolder folder, Knowledge knowledge) {
        this.folder = folder;
        this.knowledge = knowledge;
        this.answers = new Answers(knowledge);
    }

    void cancelAll() {
        work.cancelAll();
        solving.shutdownNow();
    }

    /** Begins to plan a file that is about to be opened. */
    void planAhead(String name) {
        try {
            answers.planAhead(name, folder.open(name).text(), work.begin("ahead"), solving);
        } catch (Refused toldToThePage) {
            // Whoever opens it is told.
        }
    }

    void answer(String what, byte[] body, Query query, Reply reply) throws IOException, Refused {
        switch (what) {
            case "GET /api/start" -> reply.json(200, start());
            case "GET /api/file" -> reply.json(200, file(needed(query, "name")));
            case "PUT /api/file" -> {
                String page = needed(query, "page");
                String name = needed(query, "name");
                String base = query.text("base");
                String version = folder.save(name, body, base == null ? "" : base);
                folder.forget(name, page);
                reply.json(200, Map.of("version", version));
            }
            case "PUT /api/draft" -> {
                folder.keep(needed(query, "name"), needed(query, "page"), body);
                reply.json(200, Map.of());
            }
            case "DELETE /api/draft" -> {
                folder.forget(needed(query, "name"), needed(query, "page"));
                reply.json(200, Map.of());
            }
            case "POST /api/cancel" -> {
                work.cancel(needed(query, "page"));
                reply.json(200, Map.of());
            }
            case "POST /api/plan" -> ask(answers::plan, body, query, reply);
            case "POST /api/why" -> ask(answers::why, body, query, reply);
            case "POST /api/recipe" -> ask(answers::recipe, body, query, reply);
            case "POST /api/weeks" -> ask(answers::weeks, body, query, reply);
            case "GET /sheets.html" -> reply.sheets(sheets(query));
            case "GET /sheets.pdf" -> reply.download("sheets.pdf", "application/pdf", PdfFile.of(sheets(query)));
            default -> throw new Refused(Refused.NOT_FOUND, "there is nothing at this address");
        }
    }

    private static String needed(Query query, String field) throws Refused {
        String value = query.text(field);
        if (value == null) {
            throw new Refused(Refused.BAD_REQUEST, "the request lacks \"" + field + "\"");
        }
        return value;
    }

    /** What the page needs to know once: the files, what a scenario may hold, and the foods of the catalogue. */
    private Map<String, Object> start() throws IOException {
        Map<String, Object> start = new LinkedHashMap<>();
        start.put("folder", folder.folder().toString());
        start.put("files", folder.names());
        start.put("scenario", ModelFiles.json("scenario.schema.json"));
        JsonNode shape = ModelFiles.json("shape.json");
        start.put("shape", shape);
        List<Object> foods = new ArrayList<>();
        for (Food food : knowledge.foods().all()) {
            foods.add(List.of(
                    food.label(),
                    food.group().key(),
                    Math.round(100 * knowledge.foodEnergy().kcalPerGram(food.composition(), FoodEnergy.Method.ATWATER)),
                    String.join(", ", food.aliases())));
        }
        start.put("foods", foods);
        return start;
    }

    private Map<String, Object> file(String name) throws Refused {
        ScenarioFolder.Version version = folder.open(name);
        Map<String, Object> file = new LinkedHashMap<>();
        file.put("text", version.text());
        file.put("version", version.hash());
        List<Object> drafts = new ArrayList<>();
        for (ScenarioFolder.Draft draft : folder.drafts(name)) {
            drafts.add(Map.of("page", draft.page(), "savedAt", draft.savedAt(), "draft", draft.text()));
        }
        file.put("drafts", drafts);
        return file;
    }

    /** A question that takes a while. */
    private interface Asked {
        void answer(Question question, Work.Job job, Answers.Lines lines) throws IOException, Refused;
    }

    private void ask(Asked question, byte[] body, Query query, Reply reply) throws IOException, Refused {
        String page = needed(query, "page");
        Question asked = Question.of(body);
        Work.Job job = work.begin(page);
        Object lock = new Object();
        Future<@Nullable Void> answer = solving.submit(() -> {
            question.answer(asked, job, line -> {
                synchronized (lock) {
                    reply.line(line);
                }
            });
            return null;
        });
        try {
            wait(answer, job, lock, reply);
        } finally {
            job.cancel();
            work.end(page, job);
        }
    }

    /** Says what is going on while the work goes on; when nobody listens any more the work ends. */
    private static void wait(Future<@Nullable Void> answer, Work.Job job, Object lock, Reply reply)
            throws IOException, Refused {
        while (true) {
            try {
                answer.get(BEAT_MILLISECONDS, TimeUnit.MILLISECONDS);
                return;
            } catch (TimeoutException stillAtIt) {
                synchronized (lock) {
                    reply.line(Map.of("now", job.now()));
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            } catch (ExecutionException e) {
                if (job.isCancelled() || e.getCause() instanceof CancelledException) {
                    reply.line(Map.of("cancelled", true));
                    return;
                }
                if (e.getCause() instanceof Refused refused) {
                    throw refused;
                }
                if (e.getCause() instanceof IOException io) {
                    throw io;
                }
                throw new IllegalStateException(String.valueOf(e.getCause()), e);
            }
        }
    }

    private String sheets(Query query) throws Refused {
        Planner.Result.Planned planned = answers.shown(query.text("plan"));
        Locale locale = planned.household().locale();
        Texts texts = Texts.of(Texts.languages().contains(locale.getLanguage()) ? locale : Locale.US);
        return answers.fragments().sheets(planned, texts).html();
    }
}
