package packpot.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SentenceTest {
    private static final Texts GERMAN = Texts.of(Locale.GERMANY);
    private static final Sentence COMES =
            Sentence.of("caution.comes", "Pip", new Amount("9.5 kg"), LocalDate.of(2026, 3, 14));

    @Test
    void isTheEnglishSentenceAsAStringAndInJson() throws JsonProcessingException {
        String english =
                "Pip (9.5 kg) comes on 2026-03-14, after the plan's first day, so nothing is planned for it here;"
                        + " plan again for that day";
        assertThat(COMES).hasToString(english);
        assertThat(new ObjectMapper().writeValueAsString(List.of(COMES))).isEqualTo("[\"" + english + "\"]");
    }

    @Test
    void otherLanguagesSayItsValuesInTheirWay() {
        assertThat(GERMAN.say(COMES)).startsWith("Pip (9,5 kg) kommt am 14. März 2026,");
        assertThat(GERMAN.say(Sentence.of(
                        "caution.food",
                        Term.food("beef-liver-raw", "beef liver"),
                        new Term("advice", "unheard-of", "stays English"))))
                .isEqualTo("Rinderleber: stays English");
    }

    @Test
    void listsAreSaidWithCommasWithAndOrApart() {
        List<String> names = List.of("Moss", "Pip", "Wren");
        assertThat(said(names)).isEqualTo("Moss, Pip, Wren");
        assertThat(said(new Sentence.And(names))).isEqualTo("Moss, Pip und Wren");
        assertThat(said(new Sentence.And(List.of("Moss")))).isEqualTo("Moss");
        assertThat(said(Sentence.apart(names))).isEqualTo("Moss; Pip; Wren");
    }

    private static String said(Object value) {
        return GERMAN.say(Sentence.of("said", value));
    }

    @Test
    void whatHasNoFormInAnotherLanguageIsRefused() {
        assertThatThrownBy(() -> Sentence.of("said", 2.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("said", "Double");
    }
}
