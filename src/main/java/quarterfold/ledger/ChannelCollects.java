package quarterfold.ledger;

/** Whether the channel itself accounts for the VAT on the sale. */
public enum ChannelCollects implements Coded {
    YES("yes"),
    NO("no"),
    /** The report withholds a tax that does not mirror the tax it shows. */
    UNCLEAR("unclear");

    private final String code;

    ChannelCollects(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }
}
