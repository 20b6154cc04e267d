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
}
