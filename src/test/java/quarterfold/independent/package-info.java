/**
 * A second calculation of the nine boxes that shares nothing with the first: no table, no treatment
 * and no rounding of the program, only plain sums over what a generator knows it wrote.
 *
 * <p>Start at {@link quarterfold.independent.IndependentCheckTest}. Each {@link
 * quarterfold.independent.Category} writes rows of the plain sheet and, beside them, what the box
 * by box guidance of the return makes of them; a new kind of event is one more class, named in
 * {@link quarterfold.independent.Categories}. Schemes, whole periods, closed ones and decisions
 * have tests beside it, each with a generator of its own; all run from numbered seeds, so that a
 * failure comes back, and {@code -Dquarterfold.books=N} makes more or fewer of all of them.
 */
@NullMarked
package quarterfold.independent;

import org.jspecify.annotations.NullMarked;
