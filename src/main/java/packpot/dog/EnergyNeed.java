package packpot.dog;

import packpot.words.Sentence;

/**
 * The energy that a dog needs a day, and how that was reckoned.
 *
 * @param kcalPerDay metabolizable energy, treats and other food included
 * @param equation in words
 * @param found text, memory or computed; "owner" for a veterinarian's own figure
 * @param source key of models/SOURCES.md
 */
public record EnergyNeed(LifeStage stage, double kcalPerDay, Sentence equation, String found, String source) {

    /** The same for a dog that changes in the days that are meant. */
    EnergyNeed onAverage(double averageKcalPerDay) {
        return new EnergyNeed(stage, averageKcalPerDay, Sentence.of("energy.onAverage", equation), found, source);
    }
}
