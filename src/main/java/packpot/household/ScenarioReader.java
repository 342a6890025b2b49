package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelFiles;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.food.Food;
import packpot.food.FoodEnergy;
import packpot.profile.Profiles;
import packpot.units.UnitSystem;

/** Reads a scenario file into a household in base units, or tells every fault of the file at once. */
public final class ScenarioReader {
    /** The newest format of scenario files that this program reads. */
    public static final int FORMAT = 1;

    private final Knowledge knowledge;
    private final LocalDate today;

    /**
     * A reader.
     *
     * @param today the first day of plans whose scenario names none
     */
    public ScenarioReader(Knowledge knowledge, LocalDate today) {
        this.knowledge = knowledge;
        this.today = today;
    }

    /** Reads a file. */
    public Household read(Path file) throws ScenarioException {
        return read(file.toString(), JsonText.bytes(file, "scenario"));
    }

    /**
     * Reads a scenario and the recipe that goes with it.
     *
     * @param recipeFile a recipe of its own, which goes before the scenario's; null for the scenario's
     */
    public RecipeScenario readWithRecipe(Path file, @Nullable Path recipeFile) throws ScenarioException {
        byte[] text = JsonText.bytes(file, "scenario");
        return recipeFile == null
                ? readWithRecipe(file.toString(), text)
                : withRecipe(
                        contents(file.toString(), text, false),
                        recipeFile.toString(),
                        JsonText.bytes(recipeFile, "recipe"));
    }

    /** Reads the text of a scenario with a recipe; the name is what faults call the scenario. */
    public RecipeScenario readWithRecipe(String name, byte[] text) throws ScenarioException {
        Contents contents = contents(name, text, false);
        Recipe recipe = contents.recipe();
        if (recipe == null) {
            throw new ScenarioException(
                    name,
                    List.of(new Fault(
                            "recipe",
                            "is missing; expected the recipe to check, such as {\"days\": 7, \"foods\": [{\"food\":"
                                    + " \"ground turkey, 93 % lean\", \"amount\": \"3 lb\"}]}, or a file of its own with"
                                    + " --recipe FILE")));
        }
        return new RecipeScenario(contents.household(), recipe);
    }

    /** Reads the texts of a scenario and of a recipe; the names are what faults call the files. */
    RecipeScenario readWithRecipe(String name, byte[] scenario, String recipeName, byte[] recipe)
            throws ScenarioException {
        return withRecipe(contents(name, scenario, false), recipeName, recipe);
    }

    private RecipeScenario withRecipe(Contents contents, String name, byte[] text) throws ScenarioException {
        List<Fault> faults = new ArrayList<>();
        Household household = contents.household();
        Fields fields = new Fields(JsonText.tree(name, text, "recipe"), "", faults);
        Recipe recipe = faults.isEmpty()
                ? new RecipeReader(
                                knowledge,
                                new RecipeReader.Setting(
                                        household.allDogs(),
                                        household.allDogs().stream()
                                                .map(Dog::name)
                                                .toList(),
                                        household.pantry(),
                                        contents.ownFoods(),
                                        household.kitchen().days(),
                                        household.currency(),
                                        household.foodEnergy()))
                        .read(fields)
                : null;
        if (recipe == null || !faults.isEmpty()) {
            throw new ScenarioException(name, faults);
        }
        return new RecipeScenario(household, recipe);
    }

    /**
     * Reads a scenario and the weeks that are planned for it.
     *
     * @param weeks that go before those of the scenario; null for these
     */
    public HorizonScenario readWithHorizon(Path file, @Nullable Integer weeks) throws ScenarioException {
        return readWithHorizon(file.toString(), JsonText.bytes(file, "scenario"), weeks);
    }

    /** The same for the text of a scenario; the name is what faults call it. */
    public HorizonScenario readWithHorizon(String name, byte[] text, @Nullable Integer weeks) throws ScenarioException {
        Contents contents = contents(name, text, new Aim(true, true, weeks));
        return new HorizonScenario(contents.household(), contents.horizon());
    }

    /** The text of a scenario file as it stands. */
    public static byte[] text(Path file) throws ScenarioException {
        return JsonText.bytes(file, "scenario");
    }

    /** Reads the text of a scenario; {@code name} is what faults call the file. */
    public Household read(String name, byte[] text) throws ScenarioException {
        return contents(name, text, true).household();
    }

    /** One dog, and the energy that it needs. */
    public record DogEnergy(Dog dog, EnergyNeed need) {}

    /**
     * What each dog of a scenario needs, in the scenario's order; empty in the place of one that has faults. Whatever else
     * is wrong with the scenario does not matter.
     *
     * @throws ScenarioException when the text is no scenario at all
     */
    public List<Optional<DogEnergy>> energies(String name, byte[] text) throws ScenarioException {
        List<Optional<DogEnergy>> energies = new ArrayList<>();
        if (JsonText.tree(name, text, "scenario") instanceof ObjectNode scenario) {
            for (JsonNode dog : scenario.path("dogs")) {
                ObjectNode alone = scenario.objectNode();
                scenario.properties().forEach(field -> alone.set(field.getKey(), field.getValue()));
                alone.putArray("dogs").add(dog);
                energies.add(energy(alone));
            }
        }
        return energies;
    }

    private Optional<DogEnergy> energy(ObjectNode scenario) {
        List<Fault> faults = new ArrayList<>();
        Fields fields = new Fields(scenario, "", faults);
        LocalDate start = fields.date("start");
        SettingReader.Equations equations = SettingReader.equations(fields);
        UnitSystem units = SettingReader.units(fields);
        faults.clear();
        List<Dog> dogs = dogs(fields, start == null ? today : start, equations, units, new Notes());
        return dogs.size() == 1 && faults.isEmpty()
                ? Optional.of(new DogEnergy(
                        dogs.get(0), knowledge.energy().need(dogs.get(0), equations.maintenance(), equations.growth())))
                : Optional.empty();
    }

    private List<Dog> dogs(
            Fields fields, LocalDate firstDay, SettingReader.Equations equations, UnitSystem units, Notes notes) {
        DogFinisher finisher = new DogFinisher(knowledge, firstDay, equations.maintenance(), equations.growth(), units);
        return new DogReader(knowledge, firstDay, notes, finisher).read(fields);
    }

    /** What a scenario file holds. */
    private record Contents(Household household, @Nullable Recipe recipe, List<Food> ownFoods, Horizon horizon) {}

    /**
     * What a scenario is read for.
     *
     * @param planned needs more foods than one whose recipe is checked
     * @param overTime whether dogs that come later are planned for too
     * @param weeks that are planned; null for those of the scenario
     */
    private record Aim(
            boolean planned, boolean overTime, @Nullable Integer weeks) {}

    private Contents contents(String name, byte[] text, boolean planned) throws ScenarioException {
        return contents(name, text, new Aim(planned, false, null));
    }

    private Contents contents(String name, byte[] text, Aim aim) throws ScenarioException {
        List<Fault> faults = new ArrayList<>();
        Contents contents = contents(new Fields(JsonText.tree(name, text, "scenario"), "", faults), faults, aim);
        if (contents == null || !faults.isEmpty()) {
            throw new ScenarioException(name, faults);
        }
        return contents;
    }

    private @Nullable Contents contents(Fields fields, List<Fault> faults, Aim aim) {
        if (!faults.isEmpty() || SettingReader.isNewer(fields)) {
            return null;
        }
        JsonNode usual = ModelFiles.json("shape.json");
        Notes notes = new Notes();
        String name = fields.text("name");
        LocalDate start = fields.date("start");
        String currency = SettingReader.currency(fields);
        Locale locale = SettingReader.locale(fields);
        UnitSystem system = SettingReader.units(fields);
        LocalDate firstDay = start == null ? today : start;
        String profile =
                fields.choice("profile", List.copyOf(knowledge.profiles().names()), p -> p);
        SettingReader.Equations equations = SettingReader.equations(fields);
        FoodEnergy.Method foodEnergy =
                fields.choice("foodEnergy", List.of(FoodEnergy.Method.values()), FoodEnergy.Method::key);
        Rules rules = SettingReader.rules(fields, usual);
        Double budget = SettingReader.budget(fields, currency);
        List<Dog> allDogs = dogs(fields, firstDay, equations, system, notes);
        List<Dog> dogs = Presence.dogs(allDogs, true);
        Presence.needsOne(fields, allDogs, firstDay);
        Kitchen kitchen = new KitchenReader(knowledge.kitchen(), usual, notes, system).read(fields.object("kitchen"));
        // A scenario is held to all that it says, also where that is not what it is read for.
        Notes horizonNotes = aim.overTime() ? notes : new Notes();
        Horizon horizon = new HorizonReader(knowledge.kitchen(), usual, firstDay, currency, kitchen, horizonNotes)
                .read(fields.object("horizon"), aim.weeks());
        if (aim.overTime()) {
            Presence.everyDay(fields, allDogs, firstDay, horizon.days());
        } else {
            Presence.cautions(allDogs, firstDay, kitchen.days(), system, notes);
        }
        Shape shape = new ShapeReader(usual).read(fields.object("shape"));
        List<Food> ownFoods = OwnFoodReader.read(fields);
        List<PantryItem> pantry = new PantryReader(knowledge, currency, ownFoods, notes).read(fields);
        Fields recipeFields = fields.object("recipe");
        Recipe recipe = recipeFields == null
                ? null
                : new RecipeReader(
                                knowledge,
                                new RecipeReader.Setting(
                                        allDogs,
                                        dogNames(fields),
                                        pantry,
                                        ownFoods,
                                        kitchen.days(),
                                        currency,
                                        foodEnergy == null ? FoodEnergy.Method.ATWATER : foodEnergy))
                        .read(recipeFields);
        fields.end();
        PartsTogether.energyIsLeft(fields, allDogs, knowledge.energy(), equations);
        PartsTogether.everyFoodHasADog(fields, dogs, pantry);
        Fields shapeFields = fields.object("shape");
        boolean asked = shapeFields != null && shapeFields.has("fewestFoods");
        Shape fitting = aim.planned() ? PartsTogether.enoughFoods(fields, dogs, pantry, shape, asked, notes) : shape;
        Household household = new Household(
                name == null ? "Household" : name,
                firstDay,
                currency,
                system,
                locale,
                profile == null ? Profiles.USUAL : profile,
                equations.maintenance(),
                equations.growth(),
                foodEnergy == null ? FoodEnergy.Method.ATWATER : foodEnergy,
                dogs,
                Presence.dogs(allDogs, false),
                kitchen,
                pantry,
                fitting,
                rules,
                budget,
                notes.defaults,
                notes.cautions);
        return new Contents(household, recipe, ownFoods, horizon);
    }

    private static List<String> dogNames(Fields fields) {
        List<String> names = new ArrayList<>();
        fields.raw("dogs").forEach(dog -> names.add(dog.path("name").asText("").strip()));
        return names;
    }
}
