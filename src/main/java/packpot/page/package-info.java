/** The whole job in a browser: a small server on loopback, which answers with the same plans as the command line. */
@org.jspecify.annotations.NullMarked
package packpot.page;
