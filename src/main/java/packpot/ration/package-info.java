/** The mathematics: one class per family of constraints. */
@NullMarked
package packpot.ration;

import org.jspecify.annotations.NullMarked;
