/**
 * What people read and programs take: the audit workbook, the PDF summary, JSON and CSV.
 *
 * <p>Start at {@link quarterfold.papers.WorkingPapers}. Shows results and never works one out:
 * every figure comes from {@code period} and {@code treatment}, and the workbook's boxes are
 * formulas over its own rows.
 */
@NullMarked
package quarterfold.papers;

import org.jspecify.annotations.NullMarked;
