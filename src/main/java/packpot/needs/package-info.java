/** What each dog must get in the days that the batch covers. */
@NullMarked
package packpot.needs;

import org.jspecify.annotations.NullMarked;
