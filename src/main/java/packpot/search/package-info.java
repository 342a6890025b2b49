/**
 * A search of our own for models with whole numbers that are small and dense, as those of a household are. Knows nothing of
 * food.
 */
@NullMarked
package packpot.search;

import org.jspecify.annotations.NullMarked;
