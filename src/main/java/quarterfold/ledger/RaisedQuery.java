package quarterfold.ledger;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A question the reading of a file raised, kept with its source.
 *
 * @param code what kind of question, such as {@code payout-does-not-tie}
 * @param about what it is about, such as a settlement; with the code it names the query in its
 *     source
 * @param question what was found, and what a person must answer
 */
public record RaisedQuery(long source, String code, String about, String question) {
    /** Rows of which a layout does not know what they are. */
    public static final String KIND_UNKNOWN = "kind-unknown";

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

    /** What a question is told by from all others of a book. */
    public record Name(long source, String code, String about) {
        private static final Pattern ID = Pattern.compile("S([0-9]{1,18})/([^/]+)/(.*)");

        /** The name in a text as {@link #toString} writes it. */
        public static Optional<Name> parse(String id) {
            Matcher found = ID.matcher(id);
            return found.matches()
                    ? Optional.of(
                            new Name(
                                    Long.parseLong(found.group(1)), found.group(2), found.group(3)))
                    : Optional.empty();
        }

        /** Whether it asks what rows are. */
        public boolean isOfKind() {
            return code.equals(KIND_UNKNOWN);
        }

        @Override
        public String toString() {
            return "S%d/%s/%s".formatted(source, code, about);
        }
    }

    public Name name() {
        return new Name(source, code, about);
    }
}
