/** How sure a plan is of its minimums, when foods vary and scales are coarse. */
@org.jspecify.annotations.NullMarked
package packpot.spread;
