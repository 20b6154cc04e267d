/**
 * The ledger: a book's settings, its sources and entries, and the database that keeps them,
 * append-only.
 *
 * <p>Start at {@link quarterfold.ledger.Entry} and {@link quarterfold.ledger.Line}, then {@link
 * quarterfold.ledger.Book}, which opens the {@link quarterfold.ledger.Ledger}. Depends only on
 * {@code money}; knows nothing of files' formats, of the law or of screens. Nothing is ever updated
 * or deleted: a correction is a new entry.
 */
@NullMarked
package quarterfold.ledger;

import org.jspecify.annotations.NullMarked;
