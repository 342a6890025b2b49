package packpot.dog;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import packpot.data.ModelDataException;
import packpot.data.ModelFiles;
import packpot.words.Sentence;
import packpot.words.Term;

/** The published equations for the energy that a dog needs, with the coefficients of models/energy_equations.json. */
public final class EnergyEquations {
    private static final double DAYS_PER_MONTH = 365.25 / 12;

    private final JsonNode equations;

    private EnergyEquations(JsonNode equations) {
        this.equations = equations;
    }

    public static EnergyEquations load() {
        return new EnergyEquations(ModelFiles.json("energy_equations.json"));
    }

    /** Resting energy, kcal a day. */
    public double resting(double weightKg) {
        return figure("resting", "kcalPerKg075") * Dog.metabolicWeight(weightKg);
    }

    /** The life stage that follows from what is known of a dog. */
    public LifeStage stage(Dog dog) {
        if (dog.reproduction() instanceof Reproduction.Gestation) {
            return LifeStage.GESTATION;
        }
        if (dog.reproduction() instanceof Reproduction.Lactation) {
            return LifeStage.LACTATION;
        }
        if (isGrowing(dog)) {
            return LifeStage.GROWTH;
        }
        Double goal = dog.goalKg();
        if (goal == null || goal == dog.weightKg()) {
            return LifeStage.ADULT;
        }
        return goal < dog.weightKg() ? LifeStage.WEIGHT_LOSS : LifeStage.WEIGHT_GAIN;
    }

    private boolean isGrowing(Dog dog) {
        return dog.ageMonths() < grownMonths(dog.expectedAdultKg());
    }

    private double grownMonths(@Nullable Double adultKg) {
        JsonNode grownUp = node("grownUp");
        boolean large =
                adultKg != null && adultKg >= grownUp.path("largeBreedAdultKg").doubleValue();
        return grownUp.path(large ? "largeBreedMonths" : "months").doubleValue();
    }

    /** The age in days from which a dog of this adult weight counts as grown. */
    public double grownDays(@Nullable Double expectedAdultKg) {
        return grownMonths(expectedAdultKg) * DAYS_PER_MONTH;
    }

    /** The energy that a dog needs a day, with what its weigh-ins do to the equation's figure. */
    public EnergyNeed need(Dog dog, EnergyMethod.Maintenance maintenance, EnergyMethod.Growth growth) {
        EnergyNeed need = byEquation(dog, maintenance, growth);
        EnergyCorrection correction = dog.course().correction();
        EnergyNeed today = correction == null || dog.vetKcalPerDay() != null ? need : correction.applied(need);
        Double average = dog.course().averageKcalPerDay();
        return average == null ? today : today.onAverage(average);
    }

    private EnergyNeed byEquation(Dog dog, EnergyMethod.Maintenance maintenance, EnergyMethod.Growth growth) {
        LifeStage stage = stage(dog);
        Double vet = dog.vetKcalPerDay();
        if (vet != null) {
            return new EnergyNeed(stage, vet, Sentence.of("energy.vet"), "owner", "OWNER");
        }
        return switch (stage) {
            case GROWTH -> growing(dog, growth);
            case ADULT -> maintenance(dog, dog.weightKg(), maintenance);
            case WEIGHT_LOSS -> weightLoss(dog);
            case WEIGHT_GAIN -> weightGain(dog, maintenance);
            case GESTATION -> gestation(dog);
            case LACTATION -> lactation(dog);
        };
    }

    private EnergyNeed maintenance(Dog dog, double weightKg, EnergyMethod.Maintenance method) {
        JsonNode family = node("maintenance").path(method.key());
        String name = switch (method) {
            case BY_ACTIVITY, NRC_PET -> dog.activity().key();
            case BY_AGE -> byAge(family, dog.ageDays() / 365.25);
            case BY_RESTING -> dog.neutered() ? "neutered" : "intact";
        };
        JsonNode equation = family.path(name);
        double kcal = equation.has("timesResting")
                ? equation.path("timesResting").doubleValue() * resting(weightKg)
                : equation.path("kcalPerKg075").doubleValue() * Dog.metabolicWeight(weightKg);
        return need(LifeStage.ADULT, kcal, "maintenance." + method.key() + "." + name);
    }

    private static String byAge(JsonNode family, double years) {
        for (String band : new String[] {"young", "grown"}) {
            if (years < family.path(band).path("untilYears").doubleValue()) {
                return band;
            }
        }
        return "senior";
    }

    private EnergyNeed growing(Dog dog, EnergyMethod.Growth method) {
        Double adultKg = dog.expectedAdultKg();
        if (adultKg == null) {
            JsonNode equation = node("growth").path("unknownAdultWeight");
            String multiple = dog.ageMonths() < equation.path("untilMonths").doubleValue()
                    ? "timesRestingBefore"
                    : "timesRestingAfter";
            return need(
                    LifeStage.GROWTH,
                    equation.path(multiple).doubleValue() * resting(dog.weightKg()),
                    "growth.unknownAdultWeight");
        }
        return need(LifeStage.GROWTH, growth(method, dog.weightKg(), adultKg), "growth." + method.key());
    }

    /** Energy of a growing dog, kcal a day, by the named equation. */
    public double growth(EnergyMethod.Growth method, double weightKg, double adultKg) {
        JsonNode equation = node("growth").path(method.key());
        double share = Math.min(1, weightKg / adultKg);
        double metabolic = Dog.metabolicWeight(weightKg);
        return switch (method) {
            case KLEIN -> (value(equation, "at0") - value(equation, "perShare") * share) * metabolic;
            case NRC -> value(equation, "kcalPerKg075") * metabolic * nrcGrowthFactor(share);
            case BANDS -> value(equation, share < 0.5 ? "under50" : share < 0.8 ? "under80" : "under100") * metabolic;
        };
    }

    /** How many times the maintenance of 130 kcal per kg^0.75 a puppy at this share of its adult weight needs. */
    public double nrcGrowthFactor(double shareOfAdultWeight) {
        JsonNode equation = node("growth").path("nrc");
        return value(equation, "factor")
                * (Math.exp(value(equation, "exponent") * shareOfAdultWeight) - value(equation, "less"));
    }

    private EnergyNeed weightLoss(Dog dog) {
        return need(LifeStage.WEIGHT_LOSS, figure("weightLoss", "timesResting") * resting(goal(dog)), "weightLoss");
    }

    private EnergyNeed weightGain(Dog dog, EnergyMethod.Maintenance method) {
        double goal = goal(dog);
        double multiple = figure("weightGain", "timesResting") * resting(goal);
        return need(
                LifeStage.WEIGHT_GAIN,
                Math.max(multiple, maintenance(dog, goal, method).kcalPerDay()),
                "weightGain");
    }

    private static double goal(Dog dog) {
        Double goal = dog.goalKg();
        return goal == null ? dog.weightKg() : goal;
    }

    private EnergyNeed gestation(Dog dog) {
        int week = ((Reproduction.Gestation) reproduction(dog)).week();
        double kcal = figure("gestation", "kcalPerKg075") * Dog.metabolicWeight(dog.weightKg());
        if (week > figure("gestation", "earlyWeeks")) {
            kcal += figure("gestation", "lateKcalPerKg") * dog.weightKg();
        }
        return need(LifeStage.GESTATION, kcal, "gestation");
    }

    private EnergyNeed lactation(Dog dog) {
        Reproduction.Lactation lactation = (Reproduction.Lactation) reproduction(dog);
        JsonNode factors = node("lactation").path("weekFactors");
        double byWeek =
                factors.path(Math.min(lactation.week(), factors.size()) - 1).doubleValue();
        int firstFour = Math.min(lactation.puppies(), 4);
        int nextFour = Math.max(0, Math.min(lactation.puppies(), 8) - 4);
        double milk = figure("lactation", "kcalPerKgFirstFour") * firstFour
                + figure("lactation", "kcalPerKgNextFour") * nextFour;
        double kcal = figure("lactation", "kcalPerKg075") * Dog.metabolicWeight(dog.weightKg())
                + dog.weightKg() * milk * byWeek;
        return need(LifeStage.LACTATION, kcal, "lactation");
    }

    private static Reproduction reproduction(Dog dog) {
        Reproduction reproduction = dog.reproduction();
        if (reproduction == null) {
            throw new IllegalStateException(dog.name() + " is neither in whelp nor nursing");
        }
        return reproduction;
    }

    /** The weight that a dog of this body condition would have at the ideal score; null when no score is known. */
    public @Nullable Double idealKg(Dog dog) {
        Integer score = dog.conditionScore();
        return score == null ? null : idealKg(dog.weightKg(), score);
    }

    /** Ideal weight from weight and body condition on the 9-point scale. */
    public double idealKg(double weightKg, int score) {
        return weightKg / (1 + figure("bodyCondition", "sharePerPoint") * (score - figure("bodyCondition", "ideal")));
    }

    /** The most of a day's energy that treats should make up, as a share. */
    public double mostTreatShare() {
        return figure("treats", "mostShare");
    }

    /** A need by an equation, whose place in the file is its id: names between dots. */
    private EnergyNeed need(LifeStage stage, double kcalPerDay, String id) {
        JsonNode equation = equations.at("/" + id.replace('.', '/'));
        return new EnergyNeed(
                stage,
                kcalPerDay,
                Sentence.of(
                        "said", new Term("equation", id, equation.path("words").textValue())),
                equation.path("found").textValue(),
                equation.path("source").textValue());
    }

    private JsonNode node(String name) {
        return equations.path(name);
    }

    private double figure(String equation, String name) {
        return value(node(equation), name);
    }

    private static double value(JsonNode equation, String name) {
        JsonNode figure = equation.path(name);
        if (!figure.isNumber()) {
            throw new ModelDataException("models/energy_equations.json has no figure " + name);
        }
        return figure.doubleValue();
    }
}
