package packpot.dog;

/**
 * The energy that a dog needs a day, and how that was reckoned.
 *
 * @param kcalPerDay metabolizable energy, treats and other food included
 * @param equation the equation in words
 * @param found text, memory or computed; "owner" for a veterinarian's own figure
 * @param source key of models/SOURCES.md
 */
public record EnergyNeed(LifeStage stage, double kcalPerDay, String equation, String found, String source) {}
