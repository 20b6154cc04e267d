package quarterfold.ledger;

import java.util.Locale;

/** A way to pay the VAT of a return, in the trade's words. */
public enum PaymentMethod {
    FASTER_PAYMENT,
    DIRECT_DEBIT,
    CARD,
    CHAPS,
    BACS;

    /** The word for it in settings, such as {@code direct-debit}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
