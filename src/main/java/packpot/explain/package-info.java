/** Why there is no plan, in the words of the household. */
@NullMarked
package packpot.explain;

import org.jspecify.annotations.NullMarked;
