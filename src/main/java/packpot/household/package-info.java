/** The scenario: a household in base units, or all faults of the file at once. */
@NullMarked
package packpot.household;

import org.jspecify.annotations.NullMarked;
