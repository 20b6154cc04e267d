package quarterfold.ledger;

/** Who publishes exchange rates, and how they are quoted. */
public enum Publisher implements Coded {
    /**
     * The tax authority's rate for a calendar month: units for one unit of the return's currency.
     */
    TAX_AUTHORITY("tax-authority", "the tax authority", "GBP"),
    /** The European Central Bank's reference rate of a day: units for one euro. */
    ECB("ecb", "the ECB", "EUR");

    private final String code;
    private final String words;
    private final String base;

    Publisher(String code, String words, String base) {
        this.code = code;
        this.words = words;
        this.base = base;
    }

    @Override
    public String code() {
        return code;
    }

    /** Such as {@code the tax authority}. */
    public String words() {
        return words;
    }

    /** The currency one unit of which the rates are quoted for, ISO 4217. */
    public String base() {
        return base;
    }
}
