package packpot.household;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Recipes for tests. Single quotes stand for double ones. */
public final class Recipes {
    public static final Knowledge KNOWLEDGE = Scenarios.KNOWLEDGE;

    private Recipes() {}

    /** A recipe for the dogs of a scenario. */
    public static RecipeScenario read(String scenario, String recipe) throws ScenarioException {
        return new ScenarioReader(KNOWLEDGE, Scenarios.TODAY)
                .readWithRecipe("scenario.json", bytes(scenario), "recipe.json", bytes(recipe));
    }

    /** A recipe for the household of three adults. */
    public static RecipeScenario forThreeAdults(String recipe) throws ScenarioException {
        try {
            return read(Files.readString(Path.of("scenarios/three-adults.json")), recipe);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Fault> faults(String recipe) {
        ScenarioException refused = catchThrowableOfType(ScenarioException.class, () -> read(Scenarios.SMALL, recipe));
        return refused == null ? List.of() : refused.faults();
    }

    private static byte[] bytes(String json) {
        return json.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
    }
}
