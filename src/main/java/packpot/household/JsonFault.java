package packpot.household;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says in plain words what a JSON parser stumbled over. */
final class JsonFault {
    /** The message for a number that is too large or too small to be written with an exponent. */
    static final String EXPONENT = "Number exponent";

    private static final Map<String, String> WORDS = words();

    private static final Pattern TWICE = Pattern.compile("Duplicate [^']*'(?<field>[^']{1,60})'");

    private JsonFault() {}

    private static Map<String, String> words() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("maybe a (non-standard) comment", "comments are not allowed; put the words into a \"note\" field");
        words.put("Unexpected character (']'", "a comma before a closing bracket, or a value is missing");
        words.put("Unexpected character ('}'", "a comma before a closing brace, or a value is missing");
        words.put("Unexpected character ('\\''", "texts stand in double quotes, not in single ones");
        words.put(
                "double-quote to start field name",
                "a field's name must stand in double quotes; or there is a comma too many");
        words.put("Unexpected end-of-input", "the file ends in the middle; a bracket, brace or quote is not closed");
        words.put("Non-standard token", "that is no value; numbers, true, false, null, and texts in double quotes are");
        words.put("Unrecognized token", "that is no value; a text must stand in double quotes");
        words.put("nesting depth", "it is nested too deeply for a scenario");
        words.put("Invalid UTF-8", "it is not UTF-8 text; save it as UTF-8");
        words.put("String value length", "a text in it is too long");
        words.put("Number value length", "a number in it is too long");
        words.put(EXPONENT, "a number in it has too many digits behind its \"e\"");
        words.put("was expecting comma", "a comma is missing before this place");
        return words;
    }

    static String words(String message) {
        Matcher twice = TWICE.matcher(message);
        if (twice.find()) {
            return "the field \"" + twice.group("field") + "\" stands twice in one object; keep one of them";
        }
        for (Map.Entry<String, String> entry : WORDS.entrySet()) {
            if (message.contains(entry.getKey())) {
                return entry.getValue();
            }
        }
        return message.replaceAll("\\s+", " ");
    }
}
