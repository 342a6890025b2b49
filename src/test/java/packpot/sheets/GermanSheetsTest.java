package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Demo;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.words.Sentence;
import packpot.words.Texts;

/** German sheets say in German what plan and calendar hold; names of publications alone stay English. */
class GermanSheetsTest {
    private static final Texts GERMAN = Texts.of(DemoSheets.GERMAN);
    private static final Pattern ENGLISH = Pattern.compile(" lang=\"en\"[^>]*>([^<]*)");

    /** The demos, and households of which much has to be said. */
    static Stream<Path> scenarios() throws IOException {
        return Stream.concat(
                Demo.files().stream(),
                Stream.of("growing-and-leaving", "whelp-and-nursing", "weight-and-weigh-ins")
                        .map(name -> Path.of("src", "test", "resources", "sheets", name + ".json")));
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void nothingButPublicationsIsEnglish(Path scenario) throws Exception {
        SheetSource source = DemoSheets.source(Demo.planned(scenario));
        Sheets sheets = DemoSheets.sheets(source, DemoSheets.GERMAN, Paper.A4);
        String html = sheets.html();
        Set<String> publications = new TreeSet<>(sheets.sources());
        publications.add(String.join("; ", sheets.sources()));
        assertThat(ENGLISH.matcher(html)
                        .results()
                        .map(found -> found.group(1).replace("×", "").strip()))
                .isNotEmpty()
                .allMatch(publications::contains);
        for (Sentence sentence : sentences(source)) {
            assertThat(GERMAN.say(sentence)).as(sentence.key()).isNotEqualTo(sentence.toString());
            assertThat(html).contains(escaped(GERMAN.say(sentence))).doesNotContain(escaped(sentence.toString()));
        }
    }

    /** What a plan and its calendar hold, and sheets say as it stands. */
    private static List<Sentence> sentences(SheetSource source) {
        Plan plan = source.plan();
        List<Sentence> sentences = new ArrayList<>(plan.cautions());
        sentences.addAll(plan.defaults());
        sentences.addAll(source.calendar().notes());
        sentences.add(plan.foodEnergyRule());
        plan.dogs().forEach(dog -> sentences.add(dog.energyEquation()));
        source.calendar().events().stream()
                .filter(event ->
                        event.kind() == FeedingCalendar.Kind.DOG || event.kind() == FeedingCalendar.Kind.CHANGE_OF_FOOD)
                .forEach(event -> sentences.add(event.title()));
        return sentences;
    }

    private static String escaped(String words) {
        return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
