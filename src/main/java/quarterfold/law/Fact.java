package quarterfold.law;

import java.util.List;
import java.util.Locale;

/**
 * What the treatment table may ask of an entry: one condition column each, with the words it may
 * hold. The column is the constant's name in lower case, such as {@code supplier_vat}.
 */
public enum Fact {
    /** Whether the amounts are in the currency of the return. */
    CURRENCY("home", "foreign"),
    /** Whether the business is established in the country of the return. */
    SELLER("uk", "overseas"),
    /** Whether the book says that the business trades in goods in or through Northern Ireland. */
    NORTHERN_IRELAND("yes", "no"),
    /** What the entry is, in the ledger's words. */
    KIND(),
    /** The rate category; not-a-rate is a percentage that was not in force. */
    LIABILITY(
            "standard",
            "reduced",
            "hospitality",
            "zero",
            "exempt",
            "outside",
            "not-a-rate",
            "margin",
            "reverse-charge",
            "unstated"),
    /** Where goods start. */
    STARTS("gb", "ni", "eu", "elsewhere"),
    /** Where goods go; unstated where they start abroad and nothing says. */
    GOES("gb", "ni", "eu", "elsewhere", "unstated"),
    CUSTOMER("consumer", "business"),
    CUSTOMER_VAT("none", "gb", "gb-fails", "foreign"),
    /** Whether the channel accounts for the VAT; none is a sale without a channel. */
    CHANNEL_COLLECTS("yes", "no", "unclear", "none"),
    /** Where the supplier is. */
    SUPPLIER("gb", "ni", "eu", "elsewhere", "unstated"),
    /** The supplier's VAT number: gb-fails has the shape but not the check digits. */
    SUPPLIER_VAT("none", "gb", "gb-fails", "foreign"),
    /** The VAT printed on the document; nil is a printed nought. */
    VAT("printed", "nil", "unstated"),
    /** The document held. */
    EVIDENCE(
            "invoice",
            "simplified",
            "none-needed",
            "import-certificate",
            "postponed-statement",
            "export",
            "self-billed",
            "alternative",
            "missing",
            "unstated"),
    /**
     * What the document supports: by {@code evidence.csv}, for its amount and category; by whose
     * name it is made out in; by the check digits of its VAT number, unless a person has seen it;
     * by its arithmetic; by whether another entry claims the same: it was entered before, as it
     * seems or, of an import, for sure, its amount is import VAT, its fees are on settlements, it
     * is an advance or charges one again, is another copy of a document, a closed return has claimed the import on an agent's
     * bill; and by whether an amended document has replaced it.
     */
    CLAIMS(
            "yes",
            "no",
            "over-limit",
            "not-this-category",
            "another-name",
            "number-fails",
            "repeated",
            "import-vat",
            "fee-lines",
            "advance",
            "other-copy",
            "on-bill",
            "met-again",
            "replaced"),
    /** How much of the category's VAT is blocked by {@code blocked.csv}; unknown is not listed. */
    BLOCKED("none", "part", "full", "unknown"),
    /** Whether it is a line of a channel's settlement. */
    SETTLEMENT("yes", "no"),
    /** The category as written. */
    CATEGORY(),
    /** What happened on the day: the supply itself, or something that came of it later. */
    CAUSE(
            "supply",
            "awaiting-payment",
            "export-time-up",
            "export-evidenced",
            "unpaid",
            "paid-after-all"),
    /** What a person decided that no other fact says. */
    DECIDED("none", "disallowed", "duplicate"),
    /** Whether the tax point is before the registration took effect, during it, or after. */
    REGISTRATION("before", "during", "after"),
    /**
     * Whether a claim is made within the time the law gives; unstated where the days it runs from
     * are not.
     */
    IN_TIME("yes", "no", "early", "unstated"),
    /**
     * Whether the goods were still held on the day that matters; within-limit where the VAT on all
     * goods held when the registration ended is no more than {@code stock-at-deregistration}.
     */
    ON_HAND("yes", "no", "within-limit", "unstated"),
    /**
     * What the entry is measured against: within or above a limit of {@code limits.csv} for a
     * consignment or for gifts, or the cost of goods on the margin scheme; as listed by {@code
     * fuel-scale.csv}, different from it, or not listed there.
     */
    MEASURED("within", "above", "listed", "different", "unlisted", "unstated"),
    /** What a purchase is used for. */
    USE("taxable", "exempt", "both", "unstated"),
    /** In whose name the document is made out. */
    ADDRESSED("business", "employee", "other", "unstated"),
    /** The accounting scheme the entry is under: mostly the book's. */
    SCHEME("standard", "cash", "flat-rate");

    @SuppressWarnings("ImmutableEnumChecker") // List.of makes it immutable
    private final List<String> words;

    Fact(String... words) {
        this.words = List.of(words);
    }

    /** Whether tables frozen by older closes may lack its column. */
    boolean isLater() {
        return compareTo(CAUSE) >= 0;
    }

    public String column() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The words a condition may hold; empty where any word may stand. */
    public List<String> words() {
        return words;
    }
}
