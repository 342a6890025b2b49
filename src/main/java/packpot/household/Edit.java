package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One edit of a scenario: an operation of a JSON Patch (RFC 6902).
 *
 * @param path where, as a JSON Pointer (RFC 6901), such as "/kitchen/days"
 * @param value what stands there then; null for what is removed
 */
public record Edit(Op op, String path, @Nullable JsonNode value) {

    /** What is done. */
    public enum Op {
        ADD,
        REPLACE,
        REMOVE;

        /** As a JSON Patch calls it. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Edit {
        if ((value == null) != (op == Op.REMOVE)) {
            throw new IllegalArgumentException(op.key() + " " + path + (value == null ? " lacks a value" : " has one"));
        }
    }
}
