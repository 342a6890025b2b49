package packpot.dog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import packpot.Reference;
import packpot.Reference.Line;
import packpot.food.Composition;
import packpot.food.Constituent;
import packpot.food.FoodEnergy;
import packpot.food.Nutrients;
import packpot.profile.Limit;
import packpot.profile.Profiles;
import packpot.units.Unit;

/** Every published worked example, reckoned by the program's own equations and figures. */
class WorkedExamplesTest {
    private static final EnergyEquations ENERGY = EnergyEquations.load();
    private static final FoodEnergy FOOD_ENERGY = FoodEnergy.load();
    private static final Profiles PROFILES = Profiles.load(Nutrients.load());
    /** The dry matter that profiles are converted at: 4 kcal per g. */
    private static final double THOUSAND_KCAL_PER_100_G_DRY = 2.5;

    private static final double MJ_PER_1000_KCAL = 1000 / Unit.MEGAJOULE.inBaseUnit();

    /** For each example the figures that the program gives, from the example's inputs. */
    private static final Map<String, Function<Map<String, Double>, Map<String, Double>>> RECKONED = new HashMap<>();

    private static void one(String id, Function<Map<String, Double>, Double> figure) {
        RECKONED.put(id, in -> Map.of("value", figure.apply(in)));
    }

    static {
        one("fediaf_der_110", in -> kcal(TestDogs.adult(in.get("bw"), Activity.MODERATE)));
        one("fediaf_der_95", in -> kcal(TestDogs.adult(in.get("bw"), Activity.LOW)));
        for (String id : List.of("fediaf_dm_110", "fediaf_dm_95")) {
            one(id, in -> in.get("kcal") / in.get("density") * 100);
        }
        one("fediaf_zn_110", in -> limit("fediaf", Activity.MODERATE, "zinc") / THOUSAND_KCAL_PER_100_G_DRY);
        one("fediaf_zn_95", in -> limit("fediaf", Activity.LOW, "zinc") / THOUSAND_KCAL_PER_100_G_DRY);
        for (String nutrient : List.of("protein", "arginine", "histidine", "leucine", "phe_tyr")) {
            RECKONED.put(
                    "conv_" + nutrient,
                    in -> Map.of(
                            "per_mj", in.get("per_1000kcal") / MJ_PER_1000_KCAL,
                            "per_100g_dm", in.get("per_1000kcal") / THOUSAND_KCAL_PER_100_G_DRY));
        }
        for (String nutrient : List.of("protein", "fat", "calcium", "phosphorus")) {
            one("aafco_moist_" + nutrient, in -> {
                double published = limit("aafco-2016", TestDogs.puppy(5, 12, 10.0), nutrient);
                assertThat(published / THOUSAND_KCAL_PER_100_G_DRY).isCloseTo(in.get("dm_pct"), within(0.03));
                return in.get("dm_pct") * (1 - in.get("moisture_pct") / 100);
            });
        }
        one("aafco_2p5", in -> limit("aafco-2016", Activity.MODERATE, "protein"));
        one("aafco_cu", in -> limit("aafco-2016", TestDogs.puppy(5, 12, 10.0), "copper"));
        for (String share : List.of("15", "30", "60", "71", "80", "100")) {
            one("growth_factor_" + share, in -> ENERGY.nrcGrowthFactor(in.get("p")));
        }
        RECKONED.put(
                "fediaf_growth_step",
                in -> Map.of("under_50", band(0.49), "under_80", band(0.79), "under_100", band(0.99)));
        RECKONED.put("klein_units", in -> {
            double full = perMetabolic(EnergyMethod.Growth.KLEIN, 1);
            double none = perMetabolic(EnergyMethod.Growth.KLEIN, 1e-9);
            assertThat(none).isCloseTo(in.get("at_zero_mj") * Unit.MEGAJOULE.inBaseUnit(), within(0.1));
            assertThat(none - full).isCloseTo(in.get("per_share_mj") * Unit.MEGAJOULE.inBaseUnit(), within(0.1));
            return Map.of("at_zero", none, "per_share", none - full);
        });
        one("rer_10", in -> ENERGY.resting(in.get("bw")));
        one("rer_25_linear", in -> {
            double linear = 30 * in.get("bw") + 70;
            assertThat(ENERGY.resting(in.get("bw"))).isCloseTo(linear, within(0.05 * linear));
            return linear;
        });
        for (String id : List.of("arg_hi_protein", "arg_adult18", "arg_adult30")) {
            one(id, in -> arginine(TestDogs.adult(15, Activity.MODERATE), in.get("protein_dm")));
        }
        one("arg_growth30", in -> arginine(TestDogs.puppy(5, 10, 20.0), in.get("protein_dm")));
        RECKONED.put("vit_e_pufa", in -> {
            Limit rule = limit("aafco-2016", TestDogs.adult(15), "vitamin-e", Limit.Kind.DEPENDENT_MINIMUM);
            assertThat(rule.value()).isEqualTo(in.get("ratio"));
            return Map.of("iu_kg", rule.value() * rule.threshold() * 4);
        });
        one("lact_maint_65", in -> in.get("times_resting") * ENERGY.resting(in.get("bw")));
        one(
                "lact_nrc_calc",
                in -> kcal(TestDogs.bitch(
                        in.get("bw"),
                        new Reproduction.Lactation(
                                in.get("week").intValue(), in.get("puppies").intValue()))));
        one("gest_calc", in -> kcal(TestDogs.bitch(in.get("bw"), new Reproduction.Gestation(7))));
        RECKONED.put("me_nrc_dry", WorkedExamplesTest::nrcSteps);
        one("me_modatw_dry", in -> 100 * FOOD_ENERGY.kcalPerGram(food(in), FoodEnergy.Method.MODIFIED_ATWATER));
        one("me_atwater_dry", in -> 100 * FOOD_ENERGY.kcalPerGram(food(in), FoodEnergy.Method.ATWATER));
        one("ideal_wt_bcs8", in -> ENERGY.idealKg(in.get("bw"), in.get("bcs").intValue()));
        for (String kg : List.of("2", "5", "10", "20", "30")) {
            one("wsava_" + kg + "kg", in -> in.get("times_resting") * ENERGY.resting(in.get("bw")));
        }
        // The coefficient of early gestation is that of the edition of 1985 for adults.
        one("nrc1985_adult_10kg", in -> kcal(TestDogs.bitch(in.get("bw"), new Reproduction.Gestation(2))));
    }

    static Stream<Line> examples() {
        return Reference.table("worked_examples.csv").stream();
    }

    @Test
    void everyExampleIsReckoned() {
        Set<String> ids = examples().map(line -> line.text("id")).collect(Collectors.toSet());
        assertThat(RECKONED.keySet()).containsExactlyInAnyOrderElementsOf(ids);
    }

    @ParameterizedTest
    @MethodSource("examples")
    void theProgramReckonsWhatWasPublished(Line example) {
        Map<String, Double> reckoned = RECKONED.get(example.text("id")).apply(inputs(example));
        Map<String, Double> expected = example.figures("expected");
        assertThat(reckoned.keySet()).isEqualTo(expected.keySet());
        expected.forEach((name, figure) ->
                assertThat(reckoned.get(name)).as(name).isCloseTo(figure, within(tolerance(example, figure))));
    }

    private static Map<String, Double> inputs(Line example) {
        return example.text("inputs").startsWith("shares") ? Map.of() : example.figures("inputs");
    }

    private static double tolerance(Line example, double figure) {
        String text = example.text("tolerance");
        return text.endsWith("%")
                ? figure
                        * Double.parseDouble(
                                text.substring(0, text.length() - 1).strip())
                        / 100
                : Double.parseDouble(text) + 1e-9;
    }

    private static double kcal(Dog dog) {
        return ENERGY.need(dog, EnergyMethod.Maintenance.BY_ACTIVITY, EnergyMethod.Growth.KLEIN)
                .kcalPerDay();
    }

    private static double perMetabolic(EnergyMethod.Growth method, double share) {
        return ENERGY.growth(method, 20 * share, 20) / Dog.metabolicWeight(20 * share);
    }

    private static double band(double share) {
        return perMetabolic(EnergyMethod.Growth.BANDS, share);
    }

    private static double limit(String profile, Activity activity, String nutrient) {
        return limit(profile, TestDogs.adult(15, activity), nutrient);
    }

    private static double limit(String profile, Dog dog, String nutrient) {
        return limit(profile, dog, nutrient, Limit.Kind.MINIMUM).value();
    }

    private static Limit limit(String profile, Dog dog, String nutrient, Limit.Kind kind) {
        EnergyNeed need = ENERGY.need(dog, EnergyMethod.Maintenance.BY_ACTIVITY, EnergyMethod.Growth.KLEIN);
        return PROFILES.forDog(profile, dog, need).limits().stream()
                .filter(limit -> limit.nutrient().equals(nutrient) && limit.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /** Arginine per 100 g of dry matter: the minimum, and more for protein above the threshold. */
    private static double arginine(Dog dog, double proteinOfDryMatter) {
        Limit rise = limit("fediaf", dog, "arginine", Limit.Kind.DEPENDENT_MINIMUM);
        assertThat(rise.per()).isEqualTo("protein");
        double protein = proteinOfDryMatter * THOUSAND_KCAL_PER_100_G_DRY;
        double arginine = limit("fediaf", dog, "arginine") + rise.value() * Math.max(0, protein - rise.threshold());
        return arginine / THOUSAND_KCAL_PER_100_G_DRY;
    }

    private static Composition food(Map<String, Double> in) {
        double carbohydrate = 100 - in.get("protein") - in.get("fat") - in.get("moisture") - in.get("ash");
        return Composition.ofPer100Grams(Map.of(
                Constituent.PROTEIN_G, in.get("protein"),
                Constituent.FAT_G, in.get("fat"),
                Constituent.FIBRE_G, in.get("fibre"),
                Constituent.WATER_G, in.get("moisture"),
                Constituent.CARBOHYDRATE_G, carbohydrate));
    }

    /** The four steps one by one from the program's coefficients, and the result from the program itself. */
    private static Map<String, Double> nrcSteps(Map<String, Double> in) {
        FoodEnergy.Method method = FoodEnergy.Method.NRC_STEPS;
        double carbohydrate = 100 * food(in).perGram(Constituent.CARBOHYDRATE_G);
        double gross = FOOD_ENERGY.figure(method, "grossProtein") * in.get("protein")
                + FOOD_ENERGY.figure(method, "grossFat") * in.get("fat")
                + FOOD_ENERGY.figure(method, "grossCarbohydrate") * carbohydrate;
        double digestibility = FOOD_ENERGY.figure(method, "digestibilityPercent")
                - FOOD_ENERGY.figure(method, "perFibrePercentOfDryMatter")
                        * in.get("fibre")
                        / (100 - in.get("moisture"))
                        * 100;
        Map<String, Double> steps = new LinkedHashMap<>();
        steps.put("gross", gross);
        steps.put("digestibility", digestibility);
        steps.put("digestible", gross * digestibility / 100);
        steps.put("me", 100 * FOOD_ENERGY.kcalPerGram(food(in), method));
        return steps;
    }
}
