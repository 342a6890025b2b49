/** Quantities as people type them, converted once to base units: g, ml, kcal, day. */
@NullMarked
package packpot.units;

import org.jspecify.annotations.NullMarked;
