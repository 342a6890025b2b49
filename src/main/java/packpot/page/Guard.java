package packpot.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Who may ask. Other pages in the same browser can reach a server on loopback too, so a request must name this server as
 * its host, must not come from another origin, and must know the token that was made for this start.
 */
final class Guard {
    static final String TOKEN_HEADER = "X-Packpot-Token";
    private static final int TOKEN_BYTES = 24;

    private final String token;
    private final List<String> hosts;

    /** For a server on a port of 127.0.0.1. */
    Guard(int port) {
        byte[] random = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(random);
        this.token = HexFormat.of().formatHex(random);
        this.hosts = List.of("127.0.0.1:" + port, "localhost:" + port);
    }

    String token() {
        return token;
    }

    /**
     * Why a request is refused; empty when it is not.
     *
     * @param secret whether the answer is for those alone who know the token
     */
    Optional<String> refusal(HttpExchange exchange, boolean secret) {
        Headers headers = exchange.getRequestHeaders();
        List<String> host = headers.getOrDefault("Host", List.of());
        if (host.size() != 1 || !hosts.contains(host.get(0))) {
            return Optional.of("this server is asked as " + hosts.get(0) + " alone");
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && hosts.stream().noneMatch(each -> origin.equals("http://" + each))) {
            return Optional.of("requests from other pages are refused");
        }
        String site = headers.getFirst("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            return Optional.of("requests from other pages are refused");
        }
        if (secret && !isToken(headers.getFirst(TOKEN_HEADER)) && !isToken(queryToken(exchange))) {
            return Optional.of(
                    "the token is missing or of an earlier start; open the address that packpot page printed");
        }
        return Optional.empty();
    }

    private static @Nullable String queryToken(HttpExchange exchange) {
        return Query.of(exchange).text("token");
    }

    private boolean isToken(@Nullable String given) {
        return given != null
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
    }
}
