/** The plan as pure data, in amounts that a kitchen can measure. */
@NullMarked
package packpot.plan;

import org.jspecify.annotations.NullMarked;
