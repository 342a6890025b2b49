/** Sheets to shop, cook and feed from, and to show to a veterinarian: HTML, PDF and tables, in the household's language. */
@NullMarked
package packpot.sheets;

import org.jspecify.annotations.NullMarked;
