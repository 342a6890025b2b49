/** What people read, in their language: keyed sentences, the one bundle of texts, and how a locale writes values. */
@NullMarked
package packpot.words;

import org.jspecify.annotations.NullMarked;
