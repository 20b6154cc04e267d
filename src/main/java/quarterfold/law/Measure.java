package quarterfold.law;

/** Which figure of a treated entry a box takes. */
public enum Measure {
    /** The value without VAT. */
    NET,
    /** The VAT of the entry. */
    VAT,
    /** The part of the VAT that may be reclaimed. */
    CLAIM,
    /** The value with VAT. */
    GROSS
}
