package packpot.report;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import packpot.audit.Verdict;
import packpot.plan.Plan;

/** Plans and other results for programs; the fields are described in models/plan.schema.json. */
public final class JsonReport {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new SimpleModule().addSerializer(LocalDate.class, ToStringSerializer.instance))
            .enable(SerializationFeature.INDENT_OUTPUT)
            .visibility(PropertyAccessor.IS_GETTER, JsonAutoDetect.Visibility.NONE)
            .build();

    /** The version of the form of the output; a change that could break a reader raises it. */
    public static final int FORMAT = 1;

    private JsonReport() {}

    /** A plan with the audit's verdict. */
    public static String plan(Plan plan, Verdict verdict) {
        return of(data(plan, verdict));
    }

    static Map<String, Object> data(Plan plan, Verdict verdict) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotPlan", FORMAT);
        root.put("auditPassed", verdict.passed());
        root.put("plan", plan);
        root.put("audit", verdict);
        root.put("disclaimer", Disclaimer.TEXT);
        return root;
    }

    /** Anything made of records, lists, maps and plain values. */
    public static String of(Object value) {
        return written(MAPPER.writer(), value);
    }

    /** The same in one line. */
    static String line(Object value) {
        return written(MAPPER.writer().without(SerializationFeature.INDENT_OUTPUT), value);
    }

    private static String written(ObjectWriter writer, Object value) {
        try {
            return writer.writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot be written as JSON: " + e.getOriginalMessage(), e);
        }
    }
}
