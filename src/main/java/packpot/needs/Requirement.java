package packpot.needs;

import packpot.profile.Limit;

/**
 * One figure that a dog's food is held to.
 *
 * @param limit as published
 * @param per1000Kcal the published value after raising, in the nutrient's unit per 1000 kcal; a plain number for a ratio
 * @param raised whether it was raised because the dog eats less than the profile assumes
 */
public record Requirement(Limit limit, double per1000Kcal, boolean raised) {}
