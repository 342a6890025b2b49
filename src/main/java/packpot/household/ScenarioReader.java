package packpot.household;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelFiles;
import packpot.dog.Dog;
import packpot.dog.EnergyMethod;
import packpot.dog.EnergyNeed;
import packpot.food.Food;
import packpot.food.FoodEnergy;
import packpot.profile.Profiles;
import packpot.units.Price;
import packpot.units.UnitSystem;

/** Reads a scenario file into a household in base units, or tells every fault of the file at once. */
public final class ScenarioReader {
    /** The newest format of scenario files that this program reads. */
    public static final int FORMAT = 1;

    private static final int MOST_BYTES = 2_000_000;
    private static final double MOST_OTHER_SHARE = 0.9;

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
        return read(file.toString(), bytes(file, "scenario"));
    }

    /**
     * Reads a scenario and the recipe that goes with it.
     *
     * @param recipeFile a recipe of its own, which goes before the scenario's; null for the scenario's
     */
    public RecipeScenario readWithRecipe(Path file, @Nullable Path recipeFile) throws ScenarioException {
        byte[] text = bytes(file, "scenario");
        return recipeFile == null
                ? readWithRecipe(file.toString(), text)
                : withRecipe(
                        contents(file.toString(), text, false), recipeFile.toString(), bytes(recipeFile, "recipe"));
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
        Fields fields = new Fields(tree(name, text, "recipe"), "", faults);
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
        return readWithHorizon(file.toString(), bytes(file, "scenario"), weeks);
    }

    /** The same for the text of a scenario; the name is what faults call it. */
    public HorizonScenario readWithHorizon(String name, byte[] text, @Nullable Integer weeks) throws ScenarioException {
        Contents contents = contents(name, text, new Aim(true, true, weeks));
        return new HorizonScenario(contents.household(), contents.horizon());
    }

    /** The text of a scenario file as it stands. */
    public static byte[] text(Path file) throws ScenarioException {
        return bytes(file, "scenario");
    }

    private static byte[] bytes(Path file, String what) throws ScenarioException {
        String name = file.toString();
        try {
            if (Files.isDirectory(file)) {
                throw one(
                        name,
                        "is a folder; expected a " + what + " file"
                                + (what.equals("scenario") ? " such as scenarios/three-adults.json" : ""));
            }
            // One byte more shows that there is more; what is no ordinary file has no size, and may have no end.
            try (InputStream in = Files.newInputStream(file)) {
                byte[] text = in.readNBytes(MOST_BYTES + 1);
                if (text.length > MOST_BYTES) {
                    throw one(name, "is larger than " + MOST_BYTES / 1_000_000 + " MB, which no " + what + " is");
                }
                return text;
            }
        } catch (NoSuchFileException e) {
            throw one(name, "there is no such file; check the name and the folder");
        } catch (AccessDeniedException e) {
            throw one(name, "may not be read; check its permissions");
        } catch (IOException e) {
            throw one(name, "cannot be read: " + e.getMessage());
        }
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
        if (tree(name, text) instanceof ObjectNode scenario) {
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
        Equations equations = equations(fields);
        UnitSystem units = units(fields);
        faults.clear();
        List<Dog> dogs = dogs(fields, start == null ? today : start, equations, units, new Notes());
        return dogs.size() == 1 && faults.isEmpty()
                ? Optional.of(new DogEnergy(
                        dogs.get(0), knowledge.energy().need(dogs.get(0), equations.maintenance(), equations.growth())))
                : Optional.empty();
    }

    /** Which equations give a dog's energy. */
    private record Equations(EnergyMethod.Maintenance maintenance, EnergyMethod.Growth growth) {}

    private static Equations equations(Fields fields) {
        EnergyMethod.Maintenance maintenance = fields.choice(
                "energyEquation", List.of(EnergyMethod.Maintenance.values()), EnergyMethod.Maintenance::key);
        EnergyMethod.Growth growth =
                fields.choice("growthEquation", List.of(EnergyMethod.Growth.values()), EnergyMethod.Growth::key);
        return new Equations(
                maintenance == null ? EnergyMethod.Maintenance.BY_ACTIVITY : maintenance,
                growth == null ? EnergyMethod.Growth.KLEIN : growth);
    }

    private static UnitSystem units(Fields fields) {
        UnitSystem units = fields.choice(
                "units", List.of(UnitSystem.values()), u -> u.name().toLowerCase(Locale.ROOT));
        return units == null ? UnitSystem.US : units;
    }

    private List<Dog> dogs(Fields fields, LocalDate firstDay, Equations equations, UnitSystem units, Notes notes) {
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
        Contents contents = contents(new Fields(tree(name, text, "scenario"), "", faults), faults, aim);
        if (contents == null || !faults.isEmpty()) {
            throw new ScenarioException(name, faults);
        }
        return contents;
    }

    private static ScenarioException one(String file, String message) {
        return new ScenarioException(file, List.of(new Fault("", message)));
    }

    static JsonNode tree(String name, byte[] text) throws ScenarioException {
        return tree(name, text, "scenario");
    }

    private static JsonNode tree(String name, byte[] text, String what) throws ScenarioException {
        JsonFactory json = JsonFactory.builder()
                .streamReadConstraints(
                        StreamReadConstraints.builder().maxNestingDepth(50).build())
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        try (JsonParser parser = json.createParser(text)) {
            // Figures keep their digits, for whoever writes the scenario again.
            JsonNode tree = tree(
                    JsonMapper.builder(json)
                            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
                            .build(),
                    parser);
            if (tree == null || tree.isMissingNode()) {
                throw one(
                        name,
                        "is empty; expected a " + what + ", see "
                                + (what.equals("scenario")
                                        ? "scenarios/three-adults.json"
                                        : "models/recipe.schema.json")
                                + " for one");
            }
            if (parser.nextToken() != null) {
                throw one(
                        name,
                        "goes on after the " + what + "'s closing brace, at line "
                                + parser.currentTokenLocation().getLineNr() + "; remove what follows it");
            }
            return tree;
        } catch (JsonProcessingException e) {
            String where = e.getLocation() == null
                    ? ""
                    : "line " + e.getLocation().getLineNr() + ", column "
                            + e.getLocation().getColumnNr() + ": ";
            throw one(name, "is not valid JSON; " + where + JsonFault.words(e.getOriginalMessage()));
        } catch (IOException e) {
            throw one(name, "cannot be read: " + e.getMessage());
        }
    }

    /** A number whose exponent no number can have is told as other faults of the text are; the library does not. */
    private static @Nullable JsonNode tree(JsonMapper mapper, JsonParser parser) throws IOException {
        try {
            return mapper.readTree(parser);
        } catch (NumberFormatException e) {
            throw new JsonParseException(parser, JsonFault.EXPONENT, parser.currentTokenLocation(), e);
        }
    }

    private @Nullable Contents contents(Fields fields, List<Fault> faults, Aim aim) {
        if (!faults.isEmpty() || newer(fields)) {
            return null;
        }
        JsonNode usual = ModelFiles.json("shape.json");
        Notes notes = new Notes();
        String name = fields.text("name");
        LocalDate start = fields.date("start");
        String currency = currency(fields);
        Locale locale = locale(fields);
        UnitSystem system = units(fields);
        LocalDate firstDay = start == null ? today : start;
        String profile =
                fields.choice("profile", List.copyOf(knowledge.profiles().names()), p -> p);
        Equations equations = equations(fields);
        FoodEnergy.Method foodEnergy =
                fields.choice("foodEnergy", List.of(FoodEnergy.Method.values()), FoodEnergy.Method::key);
        Rules rules = rules(fields, usual);
        Double budget = budget(fields, currency);
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
        for (Dog dog : allDogs) {
            double needs = knowledge
                    .energy()
                    .need(dog, equations.maintenance(), equations.growth())
                    .kcalPerDay();
            if (needs > 0 && dog.otherKcalPerDay() > MOST_OTHER_SHARE * needs) {
                fields.fault(
                        "dogs",
                        dog.name() + ": treats and other food bring " + Math.round(dog.otherKcalPerDay())
                                + " kcal a day of the " + Math.round(needs)
                                + " kcal that it needs; too little is left to plan, expected at most nine tenths");
            }
        }
        for (PantryItem item : pantry) {
            if (!dogs.isEmpty() && dogs.stream().allMatch(dog -> Avoidance.avoids(dog, item.food()))) {
                fields.fault(
                        "pantry", "every dog must avoid \"" + item.food().label() + "\"; take it out of the pantry");
            }
        }
        Fields shapeFields = fields.object("shape");
        boolean asked = shapeFields != null && shapeFields.has("fewestFoods");
        Shape fitting = aim.planned() ? enoughFoods(fields, dogs, pantry, shape, asked, notes) : shape;
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

    /**
     * The shape for what is in the pantry: where the scenario does not ask for a number of foods, no more are asked for
     * than could go into the pot.
     */
    private static Shape enoughFoods(
            Fields fields, List<Dog> dogs, List<PantryItem> pantry, Shape shape, boolean asked, Notes notes) {
        int usable = usable(pantry, dogs);
        if (pantry.isEmpty() || usable >= shape.fewestFoods() || shape.fewestFoods() > shape.mostFoods()) {
            return shape;
        }
        if (asked || usable == 0) {
            fields.fault(
                    "pantry",
                    usable + (usable == 1 ? " food" : " foods") + " of it can go into the pot, and at least "
                            + shape.fewestFoods()
                            + " are wished; add foods, or change what is out of stock or avoided");
            return shape;
        }
        notes.filled("taken.fewestFoods", usable);
        return shape.withFewestFoods(usable);
    }

    /** Foods, supplements apart, that could go into a pot that all dogs share. */
    static int usable(List<PantryItem> pantry, List<Dog> dogs) {
        return (int) pantry.stream()
                .filter(item -> !item.food().isSupplement() && item.place().pot())
                .filter(item -> !item.outOfStock() || item.onHandGrams() > 0)
                .filter(item -> item.atMostGrams() == null || item.atMostGrams() > 0)
                .filter(item -> dogs.stream().noneMatch(dog -> Avoidance.avoids(dog, item.food())))
                .count();
    }

    private static boolean newer(Fields fields) {
        Integer format = fields.whole("packpot", 1, 1_000_000);
        if (format != null && format > FORMAT) {
            fields.fault(
                    "packpot",
                    "this scenario is of format " + format + ", this program reads formats up to " + FORMAT
                            + "; get a newer program");
            return true;
        }
        return false;
    }

    private static String currency(Fields fields) {
        String code = fields.text("currency");
        if (code == null) {
            return "USD";
        }
        if (!code.matches("[A-Z]{3}")) {
            fields.fault("currency", "read \"" + code + "\", expected a code of three capitals such as USD or EUR");
            return "USD";
        }
        return code;
    }

    private static Locale locale(Fields fields) {
        String tag = fields.text("locale");
        if (tag == null) {
            return Locale.US;
        }
        try {
            Locale locale = new Locale.Builder().setLanguageTag(tag).build();
            if (!locale.getLanguage().isEmpty()) {
                return locale;
            }
        } catch (IllformedLocaleException e) {
            // Told below, like a tag without a language.
        }
        fields.fault("locale", "read \"" + tag + "\", expected a language and a country such as en-US or de-DE");
        return Locale.US;
    }

    private static @Nullable Double budget(Fields fields, String currency) {
        String text = fields.text("budget");
        Price price = text == null ? null : fields.parsed("budget", text, t -> Price.parse(t, currency));
        if (price != null && price.per() != null) {
            fields.fault("budget", "read \"" + text + "\", expected an amount of money such as \"$60\"");
        }
        return price == null ? null : (Double) price.amount();
    }

    private static Rules rules(Fields fields, JsonNode usual) {
        Double margin = fields.share("margin", 0.5);
        return new Rules(
                margin == null ? usual.path("margin").doubleValue() : margin,
                usual.path("energyBand").doubleValue(),
                usual.path("roundingReserve").doubleValue(),
                usual.path("sodiumMostGramsPer1000Kcal").doubleValue(),
                usual.path("leftoverWorthShare").doubleValue(),
                usual.path("roundingGrams").path("food").doubleValue(),
                usual.path("roundingGrams").path("oil").doubleValue());
    }
}
