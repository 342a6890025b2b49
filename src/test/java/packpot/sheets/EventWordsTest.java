package packpot.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;

class EventWordsTest {
    /** Tansy goes over from another food until day 6, and its additions wait until then. */
    @Test
    void aDogThatChangesItsFoodIsToldNoDose() {
        SheetSource source =
                DemoSheets.source(Demo.planned(Path.of("src/test/resources/sheets/weight-and-weigh-ins.json")));
        Sheets sheets = DemoSheets.sheets(source, Locale.US, Paper.LETTER);
        Plan.DogPlan tansy = source.plan().dogs().stream()
                .filter(dog -> dog.name().equals("Tansy"))
                .findFirst()
                .orElseThrow();
        assertThat(tansy.additions())
                .anyMatch(addition -> addition.onDays().size() < tansy.daysFed()
                        && addition.onDays().contains(1));
        assertThat(source.calendar().events().stream()
                        .filter(event -> event.kind() == FeedingCalendar.Kind.BOWL
                                && event.date().equals(source.plan().start()))
                        .map(sheets::event))
                .isNotEmpty()
                .noneMatch(words -> words.contains("Tansy"));
    }
}
