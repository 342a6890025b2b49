/** Published nutrient profiles, per 1000 kcal. */
@NullMarked
package packpot.profile;

import org.jspecify.annotations.NullMarked;
