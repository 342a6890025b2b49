package packpot.household;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ScenarioExceptionTest {

    @Test
    void whatSeveralReadersFoundIsToldOnce() {
        Fault twice = new Fault("dogs", "expected a list");
        ScenarioException fault = new ScenarioException(
                "x.json", List.of(twice, new Fault("days", "is missing"), new Fault("dogs", "expected a list")));
        assertThat(fault.faults()).hasSize(2).startsWith(twice);
        assertThat(fault).hasMessageStartingWith("x.json has 2 faults:").hasMessageContaining("days: is missing");
    }
}
