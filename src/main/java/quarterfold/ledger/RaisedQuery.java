package quarterfold.ledger;

/**
 * A question the reading of a file raised, kept with its source.
 *
 * @param code what kind of question, such as {@code payout-does-not-tie}
 * @param about what it is about, such as a settlement; with the code it names the query in its
 *     source
 * @param question what was found, and what a person must answer
 */
public record RaisedQuery(long source, String code, String about, String question) {
    /** A settlement, which {@code about} names, whose payout is not the sum of its other rows. */
    public static final String PAYOUT_DOES_NOT_TIE = "payout-does-not-tie";

    /** The same of a payout that a column states, which is no entry. */
    public static final String STATED_PAYOUT_DOES_NOT_TIE = "stated-payout-does-not-tie";

    /** A document whose figures do not tie. */
    public static final String DOCUMENT_DOES_NOT_TIE = "document-does-not-tie";

    /** A document that shows less than a VAT invoice must. */
    public static final String DOCUMENT_NOT_WHOLE = "document-not-whole";

    /** A document whose pages show other figures than are read from it. */
    public static final String DOCUMENT_PAGES_DIFFER = "document-pages-differ";

    /** A document made out to somebody else. */
    public static final String DOCUMENT_OF_OTHERS = "document-of-others";

    /** A credit note of less than nothing. */
    public static final String CREDIT_BELOW_NOTHING = "credit-below-nothing";

    /** A document from abroad entered as a service, though it may be for goods. */
    public static final String GOODS_OR_SERVICE = "goods-or-service";
}
