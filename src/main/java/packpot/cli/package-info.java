/** Commands. */
@NullMarked
package packpot.cli;

import org.jspecify.annotations.NullMarked;
