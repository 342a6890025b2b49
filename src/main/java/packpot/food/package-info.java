/** Foods, their composition, what cooking does to them, and foods that harm dogs. */
@NullMarked
package packpot.food;

import org.jspecify.annotations.NullMarked;
