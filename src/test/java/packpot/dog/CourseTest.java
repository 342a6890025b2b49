package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The days of a course are counted from another day, and nothing else of it changes. */
class CourseTest {
    private static final Transition CHANGE = new Transition("dry food", List.of(0.25, 0.5, 0.75));
    private static final Course COURSE =
            new Course(List.of(new WeighIn(-7, 10), new WeighIn(0, 11)), 500.0, 0.02, 5, 20, null, CHANGE, 600.0);

    @Test
    void countedFromAnotherDay() {
        assertThat(COURSE.from(2))
                .isEqualTo(new Course(
                        List.of(new WeighIn(-9, 10), new WeighIn(-2, 11)),
                        500.0,
                        0.02,
                        3,
                        18,
                        null,
                        new Transition("dry food", List.of(0.75)),
                        600.0));
        assertThat(COURSE.from(0)).isEqualTo(COURSE);
        assertThat(Course.NONE.from(3)).isEqualTo(Course.NONE);
    }

    @Test
    void whatIsOverByThenIsNotSaidAnyMore() {
        assertThat(COURSE.from(3).transition()).isNull();
        assertThat(COURSE.from(4).comesDay()).isEqualTo(1);
        assertThat(COURSE.from(5).comesDay()).isNull();
        assertThat(COURSE.from(6).comesDay()).isNull();
    }

    @Test
    void withOneThingChanged() {
        assertThat(COURSE.staying())
                .isEqualTo(new Course(COURSE.weighIns(), 500.0, 0.02, null, null, null, CHANGE, 600.0));
        assertThat(COURSE.withAverage(null))
                .isEqualTo(new Course(COURSE.weighIns(), 500.0, 0.02, 5, 20, null, CHANGE, null));
    }

    @ParameterizedTest
    @CsvSource({"0, 0.25", "1, 0.5", "2, 0.75", "3, 1", "4, 1"})
    void aTransitionGoesDayByDayAndIsThenOver(int day, double share) {
        assertThat(CHANGE.shareOn(day)).isEqualTo(share);
        assertThat(COURSE.newShareOn(day)).isEqualTo(share);
        assertThat(Course.NONE.newShareOn(day)).isEqualTo(1);
    }

    @Test
    void theFirstDayOnTheBatchAlone() {
        assertThat(CHANGE.fullDay()).isEqualTo(3);
        assertThat(new Transition("dry food", List.of(0.5, 1.0, 1.0)).fullDay()).isEqualTo(1);
    }
}
