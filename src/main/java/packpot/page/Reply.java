package packpot.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** How requests are answered: whole, or in lines of JSON one after the other while the work goes on. */
final class Reply {
    private static final JsonMapper JSON = new JsonMapper();
    private static final String PAGE_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'"
            + " data:; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";
    /** Sheets bring their style with them and need no script at all. */
    private static final String SHEETS_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:;"
            + " frame-ancestors 'none'; base-uri 'none'; form-action 'none'; sandbox allow-modals allow-popups";

    private final HttpExchange exchange;
    private @Nullable OutputStream lines;

    Reply(HttpExchange exchange) {
        this.exchange = exchange;
    }

    static byte[] json(Object value) {
        try {
            return JSON.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot be written as JSON: " + e.getOriginalMessage(), e);
        }
    }

    void json(int status, Object value) throws IOException {
        whole(status, "application/json", json(value), PAGE_POLICY);
    }

    void file(String type, byte[] bytes) throws IOException {
        whole(200, type, bytes, PAGE_POLICY);
    }

    void sheets(String html) throws IOException {
        whole(200, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8), SHEETS_POLICY);
    }

    /** A file that the browser keeps. */
    void download(String name, String type, byte[] bytes) throws IOException {
        exchange.getResponseHeaders().set("Content-Disposition", "attachment; filename=\"" + name + "\"");
        whole(200, type, bytes, SHEETS_POLICY);
    }

    private void whole(int status, String type, byte[] bytes, String policy) throws IOException {
        headers(type, policy);
        exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }

    /** One more line of the answer; an {@link IOException} says that nobody waits for it any more. */
    void line(Object value) throws IOException {
        OutputStream out = lines;
        if (out == null) {
            headers("application/x-ndjson", PAGE_POLICY);
            exchange.sendResponseHeaders(200, 0);
            out = exchange.getResponseBody();
            lines = out;
        }
        out.write(json(value));
        out.write('\n');
        out.flush();
    }

    boolean isBegun() {
        return lines != null;
    }

    void end() throws IOException {
        if (lines != null) {
            lines.close();
        }
    }

    private void headers(String type, String policy) {
        Headers headers = exchange.getResponseHeaders();
        headers.set("Content-Type", type);
        headers.set("Content-Security-Policy", policy);
        headers.set("Cache-Control", "no-store");
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
    }
}
