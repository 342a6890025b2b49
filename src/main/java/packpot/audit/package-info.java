/** Reckons a finished plan again, from the household and the food data alone. */
@NullMarked
package packpot.audit;

import org.jspecify.annotations.NullMarked;
