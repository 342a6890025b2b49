package packpot.household;

import java.time.LocalDate;
import java.util.Optional;
import packpot.dog.CorrectionWords;
import packpot.dog.Dog;
import packpot.dog.DogOverTime;
import packpot.dog.EnergyCorrection;
import packpot.dog.EnergyMethod;
import packpot.dog.Growth;
import packpot.dog.LifeStage;
import packpot.dog.WeighIn;
import packpot.units.Show;
import packpot.units.UnitSystem;
import packpot.words.Amount;

/** What follows for a dog from its weigh-ins: its weight on the first day, and its energy target. */
record DogFinisher(
        Knowledge knowledge,
        LocalDate start,
        EnergyMethod.Maintenance maintenance,
        EnergyMethod.Growth growth,
        UnitSystem units) {

    /**
     * Finishes a dog.
     *
     * @param weighedBefore whether its weight is that of its latest weigh-in
     */
    Dog finish(Dog dog, boolean weighedBefore, Notes notes) {
        Dog today = weighedBefore ? grown(dog, notes) : dog;
        if (knowledge.energy().stage(today) == LifeStage.GROWTH
                && knowledge.overTime().path(today).isEmpty()) {
            notes.filled("taken.noGrowth", today.name());
        }
        Optional<EnergyCorrection> correction = EnergyCorrection.of(
                today,
                knowledge.energy().need(today, maintenance, growth),
                knowledge.overTime().figures());
        correction
                .filter(found -> found.factor() != 1)
                .ifPresent(
                        found -> notes.caution("caution.correction", today.name(), CorrectionWords.of(found, units)));
        return today.withCourse(today.course().withCorrection(correction.orElse(null)));
    }

    /** A puppy has grown since its latest weigh-in. */
    private Dog grown(Dog dog, Notes notes) {
        WeighIn latest = dog.course().weighIns().get(dog.course().weighIns().size() - 1);
        Optional<DogOverTime.Path> path = knowledge.energy().stage(dog) == LifeStage.GROWTH
                ? knowledge.overTime().path(dog)
                : Optional.empty();
        double kg = path.map(each -> Growth.weightAfter(latest.kg(), each.adultKg(), each.tempoDays(), -latest.day()))
                .orElse(latest.kg());
        LocalDate day = start.plusDays(latest.day());
        Amount weighed = new Amount(Show.bodyWeight(latest.kg(), units));
        if (kg > latest.kg()) {
            notes.filled("taken.weightGrown", dog.name(), day, weighed, new Amount(Show.bodyWeight(kg, units)));
        } else {
            notes.filled("taken.weight", dog.name(), day, weighed);
        }
        return dog.at(dog.ageDays(), kg, dog.reproduction());
    }
}
