package packpot.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.data.ModelFiles;
import packpot.dog.LifeStage;
import packpot.food.FoodEnergy;
import packpot.food.Supplement;
import packpot.food.UnsafeFoods;

class TextsTest {
    private static final Path FOLDER = Path.of("src", "main", "resources", "packpot", "words");
    private static final Set<String> NAMES = Set.of(
            "food",
            "nutrient",
            "section",
            "stage",
            "how",
            "unsafe",
            "word",
            "energyrule",
            "equation",
            "advice",
            "supplement",
            "form",
            "strength");

    private static Properties bundle(String file) throws IOException {
        Properties bundle = new Properties();
        try (Reader reader = Files.newBufferedReader(FOLDER.resolve(file))) {
            bundle.load(reader);
        }
        return bundle;
    }

    private static Set<String> sentences(Properties bundle) {
        return bundle.stringPropertyNames().stream()
                .filter(key -> key.indexOf('.') < 0 || !NAMES.contains(key.substring(0, key.indexOf('.'))))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void everySentenceIsSaidInBothLanguagesWithTheSameFigures() throws IOException {
        Properties english = bundle("texts.properties");
        Properties german = bundle("texts_de.properties");
        assertThat(sentences(german)).isEqualTo(sentences(english));
        for (String key : sentences(english)) {
            if (!key.startsWith("date.") && !key.equals("event.freeze") && !key.equals("event.thaw")) {
                assertThat(places(german.getProperty(key))).as(key).isEqualTo(places(english.getProperty(key)));
            }
            // A straight apostrophe would hide what follows it from the formatter.
            assertThat((english.getProperty(key) + german.getProperty(key)).replace("''", ""))
                    .doesNotContain("'");
        }
    }

    private static Set<String> places(String sentence) {
        return Pattern.compile("\\{(\\d)")
                .matcher(sentence)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Kinds of sentences whose keys stand in the code far from where they are said. */
    private static final Set<String> KEYED = Set.of("taken", "caution", "energy", "trend", "course", "todo", "know");

    private static final Pattern LITERAL = Pattern.compile("\"([a-z]+(?:\\.[A-Za-z0-9]+)*)\"");
    private static final Pattern SAID = Pattern.compile("\\bsay\\(\\s*" + LITERAL.pattern());

    @Test
    void everyKeyOfTheCodeIsInTheBundleAndTheOtherWayRound() throws IOException {
        Set<String> keys = sentences(bundle("texts.properties"));
        Set<String> literals = new TreeSet<>();
        Set<String> said = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src", "main"))) {
            for (Path file : files.filter(each -> each.toString().matches(".*\\.(java|jte)"))
                    .toList()) {
                String code = Files.readString(file);
                LITERAL.matcher(code).results().forEach(found -> literals.add(found.group(1)));
                SAID.matcher(code).results().forEach(found -> said.add(found.group(1)));
            }
        }
        assertThat(keys).containsAll(said);
        assertThat(keys)
                .containsAll(literals.stream()
                        .filter(literal -> literal.indexOf('.') > 0 && KEYED.contains(kind(literal)))
                        .toList());
        assertThat(literals).containsAll(keys);
    }

    private static String kind(String key) {
        return key.substring(0, key.indexOf('.'));
    }

    @Test
    void everySentenceCanBeSaidOfOneAndOfMany() throws IOException {
        for (String key : sentences(bundle("texts.properties"))) {
            if (!key.startsWith("date.")) {
                for (Locale locale : List.of(Locale.US, Locale.GERMANY)) {
                    for (int count : new int[] {0, 1, 2}) {
                        Object[] values = {count, count, count, count, count, count};
                        assertThat(Texts.of(locale).say(key, values))
                                .as(key)
                                .isNotBlank()
                                .doesNotContain("{", "''");
                    }
                }
            }
        }
    }

    @Test
    void germanNamesWhatTheModelsNameInEnglish() {
        Texts german = Texts.of(Locale.GERMANY);
        List<Term> terms = new ArrayList<>();
        Demo.knowledge().foods().all().forEach(food -> {
            Supplement supplement = food.supplement();
            if (supplement != null) {
                terms.add(new Term("form", food.id(), supplement.form()));
                terms.add(new Term("strength", food.id(), supplement.activeShare()));
                if (!supplement.caution().isEmpty()) {
                    terms.add(new Term("supplement", food.id(), supplement.caution()));
                }
            }
            terms.add(Term.ofWords("section", food.kitchen().section()));
        });
        Demo.knowledge().unsafeFoods().all().stream()
                .filter(food -> food.rule() != UnsafeFoods.Rule.BLOCK)
                .forEach(food -> terms.add(new Term("advice", food.id(), food.advice())));
        Demo.knowledge().unsafeFoods().all().stream()
                .filter(food -> food.rule() == UnsafeFoods.Rule.BLOCK)
                .forEach(food -> terms.add(Term.ofWords("unsafe", food.food())));
        for (LifeStage stage : LifeStage.values()) {
            terms.add(stage.term());
        }
        for (FoodEnergy.Method method : FoodEnergy.Method.values()) {
            terms.add(new Term("energyrule", method.key(), ""));
        }
        ModelFiles.table("preparations.csv").forEach(row -> terms.add(Term.ofWords("how", row.required("label"))));
        for (String family : List.of(
                "maintenance.by-activity",
                "maintenance.by-age",
                "maintenance.by-resting",
                "maintenance.nrc-pet",
                "growth")) {
            ModelFiles.json("energy_equations.json")
                    .at("/" + family.replace('.', '/'))
                    .properties()
                    .forEach(field -> {
                        if (field.getValue().isObject()) {
                            terms.add(new Term("equation", family + "." + field.getKey(), ""));
                        }
                    });
        }
        for (String id : List.of("gestation", "lactation", "weightLoss", "weightGain")) {
            terms.add(new Term("equation", id, ""));
        }
        assertThat(terms).hasSizeGreaterThan(200).allMatch(term -> german.knows(term.key()));
    }

    @Test
    void everyNameOfTheDemosIsThere() {
        Texts german = Texts.of(Locale.GERMANY);
        for (Path file : Demo.files()) {
            Demo.read(Demo.text(file))
                    .pantry()
                    .forEach(item -> assertThat(
                                    german.knows("food." + item.food().id()))
                            .as(item.food().id())
                            .isTrue());
        }
        Demo.knowledge()
                .nutrients()
                .all()
                .forEach(nutrient -> assertThat(german.knows("nutrient." + nutrient.key()))
                        .as(nutrient.key())
                        .isTrue());
    }

    @Test
    void everyNameIsThatOfAFood() throws IOException {
        Set<String> ids = Demo.knowledge().foods().all().stream()
                .map(food -> "food." + food.id())
                .collect(Collectors.toSet());
        assertThat(ids)
                .containsAll(bundle("texts_de.properties").stringPropertyNames().stream()
                        .filter(key -> key.startsWith("food."))
                        .toList());
    }

    @Test
    void figuresAreWrittenAsTheLocaleDoes() {
        Texts american = Texts.of(Locale.US);
        Texts german = Texts.of(Locale.GERMANY);
        Texts swiss = Texts.of(Locale.forLanguageTag("de-CH"));
        assertThat(american.number(1234.5, 1)).isEqualTo("1,234.5");
        assertThat(german.number(1234.5, 1)).isEqualTo("1.234,5");
        assertThat(swiss.number(1234.5, 1)).isEqualTo("1’234.5");
        assertThat(american.money(1234.5, "USD")).isEqualTo("$1,234.50");
        assertThat(german.money(1234.5, "EUR")).isEqualTo("1.234,50\u00a0€");
        assertThat(german.money(1234.5, "JPY")).isEqualTo("1.235\u00a0¥".replace("1.235", "1.234"));
        assertThat(american.amount("1,400.5 g, 3 3/4 tsp")).isEqualTo("1,400.5 g, 3 3/4 tsp");
        assertThat(german.amount("1,400.5 g, 3 3/4 tsp")).isEqualTo("1.400,5 g, 3 3/4 TL");
        assertThat(german.amount("47 tablets of 150 ug iodine")).isEqualTo("47 Tabletten zu 150 µg Jod");
        assertThat(german.amount("about 32 large")).isEqualTo("etwa 32 große");
        assertThat(german.amount("2 gallon")).isEqualTo("2 Gallone (3,8 l)");
        assertThat(german.longDate(LocalDate.of(2026, 5, 2))).isEqualTo("Samstag, 2. Mai 2026");
        assertThat(american.longDate(LocalDate.of(2026, 5, 2))).isEqualTo("Saturday 2 May 2026");
        assertThat(german.say("head.cook", "x", 1, "y")).contains("für einen Tag,");
        assertThat(german.say("head.cook", "x", 7, "y")).contains("für 7 Tage,");
    }

    @Test
    void aLanguageWithoutTextsIsRefused() {
        assertThatThrownBy(() -> Texts.of(Locale.FRANCE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("fr-FR");
    }

    @Test
    void runsAreDrawnTogether() {
        assertThat(Texts.runs(List.of(1, 2, 3, 5, 7, 8))).isEqualTo("1–3, 5, 7, 8");
        assertThat(Texts.runs(List.of())).isEmpty();
    }
}
