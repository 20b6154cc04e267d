package quarterfold.treatment;

import quarterfold.ledger.Coded;

/**
 * What happens on a day of an entry that makes it do something to a return: words of {@link
 * quarterfold.law.Fact#CAUSE}.
 */
public enum Cause implements Coded {
    /** The supply, purchase, import or payment itself: for most entries all that ever happens. */
    SUPPLY("supply"),
    /** A supply that counts when it is paid, and is not paid yet: it adds to no box. */
    AWAITING_PAYMENT("awaiting-payment"),
    /** The time for holding evidence of export has passed without it. */
    EXPORT_TIME_UP("export-time-up"),
    /** The evidence of export came after that time. */
    EXPORT_EVIDENCED("export-evidenced"),
    /** A supplier, or this seller, has gone unpaid for the time the law sets. */
    UNPAID("unpaid"),
    /** A supplier was paid after that time. */
    PAID_AFTER_ALL("paid-after-all"),
    /**
     * What was frozen of the entry is put right, by decisions made since: once an entry and close.
     * It is the difference between two treatments, so no row of the table asks for it.
     */
    CORRECTED("corrected");

    private final String code;

    Cause(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }
}
