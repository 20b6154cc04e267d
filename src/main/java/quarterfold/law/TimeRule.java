package quarterfold.law;

import java.util.Arrays;
import java.util.Optional;

/**
 * A rule about days that a treatment is under: a row of {@code timing.csv} names each. How long it
 * runs is in {@code limits.csv}.
 */
public enum TimeRule {
    /** Zero-rated while evidence that the goods left can still come. */
    EXPORT_EVIDENCE("export-evidence"),
    /** Input tax that goes back while the supplier is not paid. */
    SUPPLIER_UNPAID("supplier-unpaid"),
    /** Output tax that relief may be had for when the customer does not pay. */
    BAD_DEBT("bad-debt"),
    /** Counted when it is paid, in a book on the cash accounting scheme. */
    CASH_ACCOUNTING("cash-accounting");

    private final String code;

    TimeRule(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    static Optional<TimeRule> find(String text) {
        return Arrays.stream(values()).filter(r -> r.code.equals(text)).findFirst();
    }
}
