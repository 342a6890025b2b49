/** Several cook days: which they are, what is cooked on each, and what passes from one to the next. */
@org.jspecify.annotations.NullMarked
package packpot.horizon;
