/** Dogs and the published equations for the energy they need. */
@NullMarked
package packpot.dog;

import org.jspecify.annotations.NullMarked;
