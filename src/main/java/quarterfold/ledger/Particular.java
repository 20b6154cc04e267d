package quarterfold.ledger;

/**
 * A fact that few lines state, each under a name of its own: days beside the tax point, amounts
 * beside the price, and words that only some treatments ask for.
 */
public enum Particular implements Coded {
    /** The day goods left or were made available, or a service was performed. */
    SENT("sent", Type.DAY),
    /** The day the VAT invoice was issued. */
    INVOICED("invoiced", Type.DAY),
    /** The day the document came into the business's hands. */
    HELD("held", Type.DAY),
    /** The day payment was due. */
    DUE("due", Type.DAY),
    /** The day the evidence of export was obtained. */
    EVIDENCED("evidenced", Type.DAY),
    /** The day goods sent on approval were kept for good. */
    ADOPTED("adopted", Type.DAY),
    /** {@code yes} where the goods were sent on approval, or on sale or return. */
    APPROVAL("approval", Type.YES_NO),
    /** What the goods cost the seller: for margin-scheme goods and gifts. */
    COST("cost", Type.AMOUNT),
    /** The intrinsic value of the consignment the goods came in. */
    CONSIGNMENT("consignment", Type.AMOUNT),
    /** The VAT of a document in another currency as it prints it in the return's currency. */
    STERLING_VAT("sterling_vat", Type.AMOUNT),
    /** The day whose exchange rate holds, where it is not the tax point. */
    EXCHANGE_DAY("exchange_day", Type.DAY),
    /** The share of the goods still held on a day that matters, 0 to 100. */
    ON_HAND("on_hand", Type.SHARE),
    /** What the purchase is used for: taxable supplies, exempt ones, or both. */
    USE("use", Type.USE),
    /** In whose name the document is made out. */
    ADDRESSED("addressed", Type.ADDRESSED),
    /** Grams of carbon dioxide a kilometre of the car a fuel scale charge is for. */
    CO2("co2", Type.NUMBER),
    /**
     * How an error of a closed return that the line is, or was in, is put right where that is not
     * for the rules to say: a deliberate one never on a later return, another apart by choice.
     */
    ERROR("error", Type.ERROR),
    /** The bank account a line of a statement was booked on. */
    ACCOUNT("account", Type.ACCOUNT),
    /** The month an import VAT certificate or a postponed import VAT statement is for. */
    STATEMENT_MONTH("statement_month", Type.MONTH),
    /** {@code yes} where such a document replaces the one issued first for its month. */
    AMENDED("amended", Type.YES_NO),
    /** {@code yes} where the document charges an advance for a supply to come. */
    ADVANCE("advance", Type.YES_NO),
    /** What the document takes off, below its VAT, as paid before it was issued. */
    PREPAID("prepaid", Type.AMOUNT),
    /** The earlier documents of the same supply that the document names. */
    FOLLOWS("follows", Type.DOCUMENTS);

    /** What a text of a particular may be. */
    public enum Type {
        DAY("a date such as 2026-09-30"),
        MONTH("a month such as 2026-09"),
        AMOUNT("an amount such as 12.50"),
        SHARE("a percentage from 0 to 100, such as 60"),
        NUMBER("a whole number such as 118"),
        YES_NO("yes or no, such as yes"),
        USE("one of taxable, exempt, both, such as taxable"),
        ADDRESSED("one of business, employee, other, such as business"),
        ERROR("one of deliberate, separate, such as separate"),
        DOCUMENTS("the numbers of documents without spaces, a comma between two, such as INV-1001"),
        ACCOUNT("the number of an account without spaces, such as GB24QFLD00000012345678");

        private final String expected;

        Type(String expected) {
            this.expected = expected;
        }

        public String expected() {
            return expected;
        }
    }

    private final String code;
    private final Type type;

    Particular(String code, Type type) {
        this.code = code;
        this.type = type;
    }

    @Override
    public String code() {
        return code;
    }

    public Type type() {
        return type;
    }
}
