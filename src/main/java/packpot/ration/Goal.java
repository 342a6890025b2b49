package packpot.ration;

/** What a ration is to be best at, or must keep to, beside being cheap. */
public sealed interface Goal permits RecipeGoal, Near {}
