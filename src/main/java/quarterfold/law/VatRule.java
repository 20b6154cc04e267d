package quarterfold.law;

/** How the VAT of an entry is found, in words of the treatment table's {@code vat} column. */
public enum VatRule {
    /** No VAT; the value is what was paid or charged. */
    NONE,
    /** As printed; where nothing is printed, the fraction inside the price, to four decimals. */
    INSIDE,
    /** Worked out on the value of one document, to the nearest penny, half up. */
    ON_DOCUMENT,
    /** The fraction inside the seller's margin, to four decimals; never below nothing. */
    ON_MARGIN,
    /** As printed; the value as stated, or else the value on which the rate gives that VAT. */
    IMPORT
}
