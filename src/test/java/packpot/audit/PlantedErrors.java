package packpot.audit;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import packpot.Records;
import packpot.plan.Plan;
import packpot.words.Sentence;

/** Copies of a plan with one error each, for every figure, yes or no, and list in it, found by walking its records. */
final class PlantedErrors {
    private static final double SHARE = 0.03;
    private static final int LEAST = 1;

    private PlantedErrors() {}

    /** Broken copies by the place and the kind of their error, such as "dogs[0].potGramsPerDay up". */
    static Map<String, Plan> in(Plan plan) {
        Map<String, Plan> broken = new LinkedHashMap<>();
        variants("", plan).forEach((place, copy) -> broken.put(place, (Plan) copy));
        return broken;
    }

    private static Map<String, Object> variants(String place, Object value) {
        Map<String, Object> variants = new LinkedHashMap<>();
        // A sentence is words, whatever figures it says.
        if (value instanceof Record whole && !(value instanceof Sentence)) {
            Object[] parts = Records.parts(whole);
            RecordComponent[] components = whole.getClass().getRecordComponents();
            for (int i = 0; i < parts.length; i++) {
                int at = i;
                String name = place.isEmpty() ? components[i].getName() : place + "." + components[i].getName();
                variants(name, parts[i]).forEach((where, part) -> {
                    Object[] copy = parts.clone();
                    copy[at] = part;
                    variants.put(where, Records.rebuilt(whole, copy));
                });
            }
        } else if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                int at = i;
                List<Object> shorter = new ArrayList<>(list);
                shorter.remove(i);
                variants.put(place + "[" + i + "] left out", shorter);
                List<Object> longer = new ArrayList<>(list);
                longer.add(list.get(i));
                variants.put(place + "[" + i + "] twice", longer);
                variants(place + "[" + i + "]", list.get(i)).forEach((where, part) -> {
                    List<Object> copy = new ArrayList<>(list);
                    copy.set(at, part);
                    variants.put(where, copy);
                });
            }
        } else if (value instanceof Double number) {
            double change = Math.max(SHARE * Math.abs(number), LEAST);
            variants.put(place + " up", number + change);
            variants.put(place + " down", number - change);
        } else if (value instanceof Boolean said) {
            variants.put(place + " denied", !said);
        } else if (value instanceof Integer number) {
            int change = Math.max((int) Math.ceil(SHARE * Math.abs(number)), LEAST);
            variants.put(place + " up", number + change);
            variants.put(place + " down", number - change);
        }
        return variants;
    }
}
