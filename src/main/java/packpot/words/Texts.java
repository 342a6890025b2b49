package packpot.words;

import java.text.DecimalFormat;
import java.text.MessageFormat;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.units.Price;
import packpot.units.Show;

/**
 * What people read, in one language: sentences, names of foods and nutrients, amounts, money and dates. All words stand in the
 * bundle {@code texts}; another language is another file of it. What a language lacks is said in English.
 */
public final class Texts {
    private static final String BUNDLE = "packpot.words.texts";
    private static final String WORD = "word.";
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.,])\\d[\\d,]*(\\.\\d+)?");
    /** Beyond this a figure of a table is no clearer. */
    private static final int MOST_DECIMALS = 4;

    /** English as plans print it, whatever the country. */
    static final Texts ENGLISH = of(Locale.ENGLISH);

    private final ResourceBundle bundle;
    private final Locale locale;
    private final List<String> words;

    private Texts(ResourceBundle bundle, Locale locale) {
        this.bundle = bundle;
        this.locale = locale;
        this.words = bundle.keySet().stream()
                .filter(key -> key.startsWith(WORD))
                .map(key -> key.substring(WORD.length()))
                .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** Languages that there is a bundle for: English, and every other that has a file of it. */
    public static List<String> languages() {
        return Arrays.stream(Locale.getISOLanguages()).filter(Texts::has).toList();
    }

    private static boolean has(String language) {
        return language.equals("en") || Texts.class.getResource("texts_" + language + ".properties") != null;
    }

    /**
     * The texts for a locale.
     *
     * @throws IllegalArgumentException when its language has no bundle
     */
    public static Texts of(Locale locale) {
        if (!has(locale.getLanguage())) {
            throw new IllegalArgumentException("there are no texts in " + locale.toLanguageTag());
        }
        return new Texts(
                ResourceBundle.getBundle(
                        BUNDLE,
                        locale,
                        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)),
                locale);
    }

    public Locale locale() {
        return locale;
    }

    /** For the attribute lang of what has no words of its own in this language; null where that is English anyway. */
    public @Nullable String langOfEnglish() {
        return isEnglish() ? null : "en";
    }

    private boolean isEnglish() {
        return locale.getLanguage().equals("en");
    }

    /**
     * A sentence.
     *
     * @param values for {0}, {1} and so on; whole numbers may choose between singular and plural
     */
    public String say(String key, Object... values) {
        return new MessageFormat(bundle.getString(key), locale).format(values);
    }

    /** A sentence that a plan, a household or a calendar holds. */
    public String say(Sentence sentence) {
        return say(sentence.key(), sentence.values().stream().map(this::said).toArray());
    }

    /** One value of a sentence; counts stay numbers, for what chooses between singular and plural. */
    private Object said(Object value) {
        if (value instanceof Sentence sentence) {
            return say(sentence);
        } else if (value instanceof Amount amount) {
            return isEnglish() ? amount.english() : amount(amount.english());
        } else if (value instanceof Term term) {
            return name(term);
        } else if (value instanceof LocalDate date) {
            return date(date, "date.day");
        } else if (value instanceof Sentence.Weekday day) {
            return weekday(day.date());
        } else if (value instanceof List<?> list) {
            return commas(list);
        } else if (value instanceof Sentence.And and) {
            int last = and.items().size() - 1;
            return last < 1
                    ? commas(and.items())
                    : say(
                            "list.and",
                            commas(and.items().subList(0, last)),
                            said(and.items().get(last)));
        }
        return value;
    }

    private String commas(List<?> items) {
        return items.stream().map(each -> said(each).toString()).collect(Collectors.joining(", "));
    }

    /** The name of something that the models name in English. */
    public String name(Term term) {
        return knows(term.key()) ? bundle.getString(term.key()) : term.english();
    }

    /** The name of something that the models name in English: a food, a nutrient, a section of the shop. */
    public String name(String kind, String id, String english) {
        return name(new Term(kind, id, english));
    }

    public String food(String id, String english) {
        return name("food", id, english);
    }

    /** Whether the bundle knows a key. */
    boolean knows(String key) {
        try {
            bundle.getString(key);
            return true;
        } catch (MissingResourceException e) {
            return false;
        }
    }

    /** An amount as plans print it, such as "1 3/4 tsp" or "1,400.5 g", in words and figures of this language. */
    public String amount(String english) {
        // Words may hold figures of their language themselves, so they come last.
        String text = figures(english);
        for (String word : words) {
            text = Pattern.compile("(?<![\\p{L}])" + Pattern.quote(word.replace('_', ' ')) + "(?![\\p{L}])")
                    .matcher(text)
                    .replaceAll(Matcher.quoteReplacement(bundle.getString(WORD + word)));
        }
        return text;
    }

    /** The same sentence with its figures as this locale writes them. */
    private String figures(String text) {
        return NUMBER.matcher(text).replaceAll(found -> {
            String figure = found.group().replace(",", "");
            int decimals = figure.contains(".") ? figure.length() - figure.indexOf('.') - 1 : 0;
            boolean more = found.group().endsWith(",");
            return number(Double.parseDouble(figure), decimals) + (more ? "," : "");
        });
    }

    /** A figure with as many decimals as its size asks for. */
    public String number(double value) {
        return figures(Show.number(value));
    }

    /** A figure with so many decimals. */
    public String number(double value, int decimals) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setMinimumFractionDigits(Math.min(decimals, MOST_DECIMALS));
        format.setMaximumFractionDigits(Math.min(decimals, MOST_DECIMALS));
        return format.format(value);
    }

    public String percent(double share) {
        return number(100 * share, 1) + " %";
    }

    /** Money with the sign that the scenario's currency has. */
    public String money(double amount, String currencyCode) {
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        if (format instanceof DecimalFormat decimal) {
            var symbols = decimal.getDecimalFormatSymbols();
            symbols.setCurrencySymbol(Price.sign(currencyCode));
            decimal.setDecimalFormatSymbols(symbols);
        }
        try {
            int digits = Math.max(0, Currency.getInstance(currencyCode).getDefaultFractionDigits());
            format.setMinimumFractionDigits(digits);
            format.setMaximumFractionDigits(digits);
        } catch (IllegalArgumentException notInIso4217) {
            format.setMaximumFractionDigits(2);
        }
        return format.format(amount);
    }

    public String longDate(LocalDate date) {
        return date(date, "date.long");
    }

    public String shortDate(LocalDate date) {
        return date(date, "date.short");
    }

    String weekday(LocalDate date) {
        return date(date, "date.weekday");
    }

    private String date(LocalDate date, String pattern) {
        return DateTimeFormatter.ofPattern(bundle.getString(pattern), locale).format(date);
    }

    /** "1-3, 5": numbers with runs drawn together. */
    public static String runs(List<Integer> numbers) {
        List<String> parts = new ArrayList<>();
        int i = 0;
        while (i < numbers.size()) {
            int j = i;
            while (j + 1 < numbers.size() && numbers.get(j + 1) == numbers.get(j) + 1) {
                j++;
            }
            parts.add(
                    j == i
                            ? String.valueOf(numbers.get(i))
                            : numbers.get(i) + (j == i + 1 ? ", " : "–") + numbers.get(j));
            i = j + 1;
        }
        return String.join(", ", parts);
    }
}
