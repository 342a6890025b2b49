/** A linear model with integers, and the solver behind one door. Knows nothing of food. */
@NullMarked
package packpot.solver;

import org.jspecify.annotations.NullMarked;
