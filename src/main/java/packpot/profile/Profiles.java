package packpot.profile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.data.Row;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.dog.LifeStage;
import packpot.food.Nutrient;
import packpot.food.Nutrients;

/** The published nutrient profiles of models/profiles.csv. */
public final class Profiles {
    /** What is used for a household that names none. */
    public static final String USUAL = "aafco-2016";

    private static final String CEILINGS = "ceilings";
    /** A printed figure that nobody is held to. */
    private static final String REFERENCE = "reference";

    private static final double EARLY_GROWTH_WEEKS = 14;
    private static final double CLOSE_KCAL = 1e-6;

    private final List<Row> limits;
    private final Map<String, Row> info;
    private final Nutrients nutrients;

    private Profiles(List<Row> limits, Map<String, Row> info, Nutrients nutrients) {
        this.limits = limits;
        this.info = info;
        this.nutrients = nutrients;
    }

    public static Profiles load(Nutrients nutrients) {
        Map<String, Row> info = new LinkedHashMap<>();
        for (Row row : ModelFiles.table("profile_info.csv")) {
            info.put(key(row.required("profile"), row.required("stage")), row);
        }
        return new Profiles(ModelFiles.table("profiles.csv"), info, nutrients);
    }

    private static String key(String profile, String stage) {
        return profile + " " + stage;
    }

    /** The names that a scenario may use. */
    public Set<String> names() {
        Set<String> names = new LinkedHashSet<>();
        info.values().forEach(row -> names.add(row.required("profile")));
        names.remove(CEILINGS);
        return names;
    }

    /** The column of a profile that a dog is held to, with the figures that its size and age call for. */
    public ProfileStage forDog(String profile, Dog dog, EnergyNeed energy) {
        String stage = stageOf(profile, dog, energy);
        Row row = info.get(key(profile, stage));
        if (row == null) {
            throw new ModelDataException("models/profile_info.csv has no " + profile + ", " + stage);
        }
        OptionalDouble reference = row.optionalNumber("reference_kcal_per_kg075");
        return new ProfileStage(
                profile,
                stage,
                row.required("title"),
                reference.isPresent() ? reference.getAsDouble() : null,
                limits(profile, stage, dog));
    }

    /** Maximums that hold for every dog beside its profile. */
    public List<Limit> ceilings(Dog dog) {
        return limits(CEILINGS, "all", dog);
    }

    private static String stageOf(String profile, Dog dog, EnergyNeed energy) {
        boolean reproducing = energy.stage() == LifeStage.GESTATION || energy.stage() == LifeStage.LACTATION;
        boolean growing = energy.stage() == LifeStage.GROWTH;
        boolean early = dog.ageWeeks() < EARLY_GROWTH_WEEKS;
        return switch (profile) {
            case "fediaf" ->
                growing || reproducing
                        ? (early || reproducing ? "early-growth" : "late-growth")
                        : energy.kcalPerDay() / Dog.metabolicWeight(dog.weightKg()) >= 110 - CLOSE_KCAL
                                ? "adult-110"
                                : "adult-95";
            case "nrc-2006" ->
                growing || reproducing
                        ? (early || reproducing ? "growth-4-14-weeks" : "growth-over-14-weeks")
                        : "adult";
            default -> growing || reproducing ? "growth" : "adult";
        };
    }

    private List<Limit> limits(String profile, String stage, Dog dog) {
        List<Limit> chosen = new ArrayList<>();
        for (Row row : limits) {
            if (row.required("profile").equals(profile)
                    && row.required("stage").equals(stage)
                    && !row.required("limit").equals(REFERENCE)
                    && holds(row.text("condition"), dog)) {
                chosen.add(limit(row));
            }
        }
        return chosen;
    }

    /** Some figures hold only for dogs of a size; a puppy of unknown adult weight is held to the stricter one. */
    private static boolean holds(String condition, Dog dog) {
        Double adult = dog.expectedAdultKg();
        double adultKg = adult == null ? dog.ageMonths() < 12 ? 100 : dog.weightKg() : adult;
        boolean largeUntilHalfYear = adultKg > 15 && dog.ageWeeks() < 26;
        return switch (condition) {
            case "" -> true;
            case "adult-weight-at-least-31.75kg" -> adultKg >= 31.75;
            case "adult-weight-under-31.75kg" -> adultKg < 31.75;
            case "adult-weight-over-15kg-until-26-weeks" -> largeUntilHalfYear;
            case "adult-weight-up-to-15kg-or-after-26-weeks" -> !largeUntilHalfYear;
            default -> throw new ModelDataException("models/profiles.csv: unknown condition " + condition);
        };
    }

    private Limit limit(Row row) {
        String key = row.required("nutrient");
        Limit.Kind kind = switch (row.required("limit").toLowerCase(Locale.ROOT)) {
            case "min" -> Limit.Kind.MINIMUM;
            case "max" -> Limit.Kind.MAXIMUM;
            case "min-per" -> Limit.Kind.DEPENDENT_MINIMUM;
            default ->
                throw new ModelDataException(
                        "models/profiles.csv: limit is min, max or min-per, not " + row.required("limit"));
        };
        String per = row.text("per");
        double factor = nutrients.isRatio(key) ? 1 : toOwnUnit(nutrients.get(key), row.required("unit"));
        return new Limit(
                key,
                kind,
                row.number("value") * factor,
                per.isEmpty() ? null : per,
                row.optionalNumber("threshold").orElse(0),
                row.required("found"),
                row.required("source"),
                row.text("note"));
    }

    private static double toOwnUnit(Nutrient nutrient, String unit) {
        if (unit.equals(nutrient.unit())) {
            return 1;
        }
        return switch (nutrient.key() + " " + unit) {
            case "vitamin-a ug RE" -> 1 / 0.3;
            case "vitamin-d ug" -> 40;
            case "vitamin-e mg" -> 1.49;
            default -> grams(unit) / grams(nutrient.unit());
        };
    }

    private static double grams(String unit) {
        return switch (unit) {
            case "g" -> 1;
            case "mg" -> 1e-3;
            case "ug" -> 1e-6;
            default -> throw new ModelDataException("models/profiles.csv: unknown unit " + unit);
        };
    }
}
