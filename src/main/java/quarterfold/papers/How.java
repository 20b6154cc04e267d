package quarterfold.papers;

import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.period.VatReturn;

/** The sentences that say how the figures came about, the same in the workbook and the summary. */
final class How {

    private How() {}

    /** Where the workbook's figures come from. */
    static String addedUp(VatReturn vatReturn) {
        String sheets =
                vatReturn.adjustments().isEmpty()
                        ? "Imports and Other money"
                        : "Imports, Other money and Adjustments";
        return "The figures are live: each box adds the column of its number on the sheets Sales,"
                + " Purchases, "
                + sheets
                + ", is brought to four decimals, and is rounded once. The figure beside it was"
                + " worked out from the ledger before this workbook was written.";
    }

    /** What the rounding the book did not choose would change. */
    static String otherRounding(Pack pack) {
        boolean perLine = pack.settings().roundingPerLine();
        BoxFigure difference = Words.difference(pack.vatReturn());
        Amount other =
                pack.otherRounding().getOrDefault(difference.box().id(), difference.figure());
        Amount more = other.minus(difference.figure());
        String effect =
                more.isZero()
                        ? "leave box " + difference.box().id() + " as it is"
                        : (more.signum() > 0 ? "raise" : "lower")
                                + " box "
                                + difference.box().id()
                                + " by "
                                + Words.figure(difference.box(), more.abs());
        return "Rounding of the VAT in sales: "
                + Words.rounding(perLine)
                + ". The other way the book may choose, "
                + Words.rounding(!perLine)
                + ", would "
                + effect
                + ".";
    }

    /** How many queries are open. */
    static String queries(VatReturn vatReturn) {
        int queries = vatReturn.openQueries().size();
        return queries == 0
                ? "No query is open."
                : Words.of(queries, "query is", "queries are")
                        + " open; a figure is safe when its queries are answered.";
    }
}
