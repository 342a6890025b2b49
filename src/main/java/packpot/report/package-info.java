/** What people and programs read. */
@NullMarked
package packpot.report;

import org.jspecify.annotations.NullMarked;
