package packpot.page;

import java.util.LinkedHashMap;
import java.util.Map;

/** A request that cannot be answered, with what the person is told. */
final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    static final int BAD_REQUEST = 400;
    static final int FORBIDDEN = 403;
    static final int NOT_FOUND = 404;
    static final int NOT_ALLOWED = 405;
    static final int CONFLICT = 409;
    static final int TOO_LARGE = 413;
    static final int FAULT_OF_PROGRAM = 500;

    private final int status;
    private final transient Map<String, Object> details;

    Refused(int status, String message) {
        this(status, message, Map.of());
    }

    Refused(int status, String message, Map<String, Object> details) {
        super(message);
        this.status = status;
        this.details = Map.copyOf(details);
    }

    int status() {
        return status;
    }

    Map<String, Object> data() {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("message", String.valueOf(getMessage()));
        data.putAll(details);
        return data;
    }
}
