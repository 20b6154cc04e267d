package quarterfold.ledger;

/** Who buys: a person, or a business. */
public enum Customer implements Coded {
    CONSUMER("consumer"),
    BUSINESS("business");

    private final String code;

    Customer(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }
}
