package packpot.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import packpot.household.Knowledge;

/** The server of the page: on loopback alone, for whoever knows the address that it was started with. */
public final class PageServer implements AutoCloseable {
    /** Browsers ask a few things at once; more than these wait. */
    private static final int THREADS = 16;

    private static final int WAITING = 50;

    private static final Map<String, String> TYPES = Map.of(
            ".js", "text/javascript; charset=utf-8",
            ".css", "text/css; charset=utf-8",
            ".html", "text/html; charset=utf-8",
            ".svg", "image/svg+xml");

    private final HttpServer server;
    private final ExecutorService threads;
    private final Guard guard;
    private final Api api;

    private PageServer(HttpServer server, Guard guard, Api api) {
        this.server = server;
        this.guard = guard;
        this.api = api;
        this.threads = Executors.newFixedThreadPool(THREADS, task -> {
            Thread thread = new Thread(task, "packpot-page");
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Starts it.
     *
     * @param folder whose scenario files are opened and saved
     * @param port to listen on; 0 for any that is free
     * @throws java.net.BindException when something else listens there
     */
    public static PageServer start(Path folder, int port, Knowledge knowledge) throws IOException {
        ScenarioFolder scenarios = new ScenarioFolder(folder);
        HttpServer http = HttpServer.create(
                new InetSocketAddress(InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1}), port), WAITING);
        PageServer server = new PageServer(http, new Guard(http.getAddress().getPort()), new Api(scenarios, knowledge));
        http.setExecutor(server.threads);
        http.createContext("/", server::answer);
        http.start();
        return server;
    }

    /**
     * The address of the page, with the token of this start.
     *
     * @param file that it opens first, which begins to be planned; null for the list of them
     */
    public URI address(@Nullable String file) {
        if (file != null) {
            api.planAhead(file);
        }
        String query = "token=" + guard.token()
                + (file == null
                        ? ""
                        : "&file=" + java.net.URLEncoder.encode(file, java.nio.charset.StandardCharsets.UTF_8));
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/?" + query);
    }

    @Override
    public void close() {
        api.cancelAll();
        server.stop(0);
        threads.shutdownNow();
    }

    private void answer(HttpExchange exchange) {
        Reply reply = new Reply(exchange);
        try (exchange) {
            try {
                String path = exchange.getRequestURI().getPath();
                boolean file = path.startsWith("/page/");
                var refusal = guard.refusal(exchange, !file);
                if (refusal.isPresent()) {
                    throw new Refused(Refused.FORBIDDEN, refusal.get());
                }
                if (path.equals("/") || file) {
                    file(exchange, file ? path.substring("/page/".length()) : "page.html", reply);
                } else {
                    api.answer(exchange.getRequestMethod() + " " + path, body(exchange), Query.of(exchange), reply);
                }
                reply.end();
            } catch (Refused refused) {
                refuse(reply, refused);
            } catch (RuntimeException fault) {
                refuse(
                        reply,
                        new Refused(
                                Refused.FAULT_OF_PROGRAM,
                                "a fault of the program, not of your scenario: " + fault.getMessage()));
            }
        } catch (IOException nobodyWaits) {
            // The page went away or asked something newer.
        }
    }

    private static void refuse(Reply reply, Refused refused) throws IOException {
        if (reply.isBegun()) {
            reply.line(Map.of("refused", refused.data()));
            reply.end();
        } else {
            reply.json(refused.status(), refused.data());
        }
    }

    private static void file(HttpExchange exchange, String name, Reply reply) throws IOException, Refused {
        if (!exchange.getRequestMethod().equals("GET")) {
            throw new Refused(Refused.NOT_ALLOWED, "this is only read");
        }
        String type = TYPES.get(name.substring(Math.max(0, name.lastIndexOf('.'))));
        // Names without folders alone, so that nothing else of the program can be asked for.
        try (InputStream in =
                type != null && name.matches("[a-z-]+\\.[a-z]+") ? PageServer.class.getResourceAsStream(name) : null) {
            if (in == null || type == null) {
                throw new Refused(Refused.NOT_FOUND, "there is no such page");
            }
            reply.file(type, in.readAllBytes());
        }
    }

    private static byte[] body(HttpExchange exchange) throws IOException, Refused {
        byte[] body = exchange.getRequestBody().readNBytes(Api.MOST_BYTES + 1);
        if (body.length > Api.MOST_BYTES) {
            throw new Refused(
                    Refused.TOO_LARGE,
                    "more than " + Api.MOST_BYTES / 1_000_000 + " MB was sent; no scenario is that large",
                    new LinkedHashMap<>());
        }
        return body;
    }
}
