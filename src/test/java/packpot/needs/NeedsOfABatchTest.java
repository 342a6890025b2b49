package packpot.needs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import packpot.Demo;
import packpot.household.Household;
import packpot.profile.Limit;

/** What a whole batch must bring, and whose limit holds where two meet. */
class NeedsOfABatchTest {
    private static final double CLOSE = 1e-9;

    private static Household household(String dogs) {
        return Demo.read("{\"packpot\": 1, \"start\": \"2026-03-07\", \"dogs\": [" + dogs + "],"
                + " \"kitchen\": {\"days\": 10}, \"pantry\": [{\"food\": \"potato\", \"price\": \"$2/kg\"}]}");
    }

    @Test
    void aDogThatLeavesIsReckonedOnItsOwnDays() {
        Needs needs = needs(household("{\"name\": \"Ash\", \"weight\": \"10 kg\", \"age\": \"4 years\"},"
                + "{\"name\": \"Elm\", \"weight\": \"20 kg\", \"age\": \"4 years\", \"leaves\": \"2026-03-11\"}"));
        DogNeed ash = needs.dogs().get(0);
        DogNeed elm = needs.dogs().get(1);

        assertThat(ash.days()).isEqualTo(10);
        assertThat(elm.days()).isEqualTo(4);
        double all = 10 * ash.kcalPerDay() + 4 * elm.kcalPerDay();
        assertThat(needs.kcalPerBatch()).isCloseTo(all, within(CLOSE * all));
        assertThat(needs.share(ash)).isCloseTo(10 * ash.kcalPerDay() / all, within(CLOSE));
        assertThat(needs.share(elm)).isCloseTo(4 * elm.kcalPerDay() / all, within(CLOSE));
        assertThat(needs.kcalPerDay()).isCloseTo(ash.kcalPerDay() + elm.kcalPerDay(), within(CLOSE * all));
        assertThat(elm.kcalPerBatch()).isCloseTo(4 * elm.kcalPerDay(), within(CLOSE * all));
    }

    @Test
    void aDogThatComesIsReckonedFromItsFirstDayAndOneThatIsNeverThereNotAtAll() {
        Household all = household("{\"name\": \"Ash\", \"weight\": \"10 kg\", \"age\": \"4 years\"},"
                + "{\"name\": \"Elm\", \"weight\": \"20 kg\", \"age\": \"4 years\", \"comes\": \"2026-03-10\","
                + " \"leaves\": \"2026-03-15\"},"
                + "{\"name\": \"Oak\", \"weight\": \"20 kg\", \"age\": \"4 years\", \"comes\": \"2026-03-17\"},"
                + "{\"name\": \"Yew\", \"weight\": \"20 kg\", \"age\": \"4 years\", \"comes\": \"2026-03-16\"}");
        Needs needs = needs(all.withDogs(all.allDogs()));
        assertThat(needs.dogs()).extracting(need -> need.dog().name()).containsExactly("Ash", "Elm", "Yew");
        assertThat(needs.dogs()).extracting(DogNeed::firstDay).containsExactly(0, 3, 9);
        assertThat(needs.dogs()).extracting(DogNeed::days).containsExactly(10, 5, 1);
    }

    @Test
    void everyDogIsHeldToTheSodiumCeilingOfTheHousehold() {
        Household household = household("{\"name\": \"Ash\", \"weight\": \"10 kg\", \"age\": \"4 years\"}");
        Requirement sodium = needs(household).dogs().get(0).requirements().stream()
                .filter(r -> r.limit().nutrient().equals("sodium") && r.limit().kind() == Limit.Kind.MAXIMUM)
                .findFirst()
                .orElseThrow();
        assertThat(sodium.per1000Kcal()).isEqualTo(household.rules().sodiumMostGramsPer1000Kcal());
    }

    private static Needs needs(Household household) {
        return Needs.of(household, Demo.knowledge());
    }
}
