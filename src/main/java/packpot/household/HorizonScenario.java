package packpot.household;

/** A household and the weeks that are planned for it. */
public record HorizonScenario(Household household, Horizon horizon) {}
