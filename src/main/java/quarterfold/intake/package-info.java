/**
 * Files in: recognises a file's layout, reads every row, ties the file's control totals, and enters
 * the whole file or nothing.
 *
 * <p>Start at {@link quarterfold.intake.Delivery} for what a person named, and at {@link
 * quarterfold.intake.Importer} for one file of it; a report no layout knows is worked out by {@link
 * quarterfold.intake.Learner}. A layout is a YAML file; the plain sheet is our own interchange.
 * Depends on {@code ledger} and {@code money}; knows nothing of the law.
 */
@NullMarked
package quarterfold.intake;

import org.jspecify.annotations.NullMarked;
