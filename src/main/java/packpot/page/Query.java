package packpot.page;

import com.sun.net.httpserver.HttpExchange;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What stands behind the question mark of a request's address. */
record Query(Map<String, String> fields) {
    Query {
        fields = Map.copyOf(fields);
    }

    static Query of(HttpExchange exchange) {
        Map<String, String> fields = new HashMap<>();
        String raw = exchange.getRequestURI().getRawQuery();
        for (String part : raw == null ? new String[0] : raw.split("&")) {
            int equals = part.indexOf('=');
            if (equals > 0) {
                try {
                    fields.put(
                            part.substring(0, equals),
                            URLDecoder.decode(part.substring(equals + 1), StandardCharsets.UTF_8));
                } catch (IllegalArgumentException notEncoded) {
                    // A field that cannot be read is one that was not given.
                }
            }
        }
        return new Query(fields);
    }

    @Nullable
    String text(String name) {
        return fields.get(name);
    }
}
