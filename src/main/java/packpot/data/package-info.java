/** The one door through which the files of models/ are read. */
@NullMarked
package packpot.data;

import org.jspecify.annotations.NullMarked;
