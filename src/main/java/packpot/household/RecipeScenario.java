package packpot.household;

/** A household and a recipe that is cooked for its dogs. */
public record RecipeScenario(Household household, Recipe recipe) {}
