package quarterfold.ledger;

/** The document that supports an entry, as its owner states it. */
public enum Evidence implements Coded {
    INVOICE("invoice"),
    SIMPLIFIED("simplified"),
    NONE_NEEDED("none-needed"),
    IMPORT_CERTIFICATE("import-certificate"),
    POSTPONED_STATEMENT("postponed-statement"),
    EXPORT("export"),
    SELF_BILLED("self-billed"),
    /** Other proof of a purchase, which only the tax authority may accept. */
    ALTERNATIVE("alternative"),
    MISSING("missing"),
    /** Nothing was said. */
    UNSTATED("unstated");

    private final String code;

    Evidence(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }
}
