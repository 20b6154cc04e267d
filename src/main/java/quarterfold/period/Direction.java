package quarterfold.period;

/** Which way the money of a return goes. */
public enum Direction {
    /** Box 3 is the larger: the business pays. */
    PAY("pay"),
    /** Box 4 is the larger: the business is repaid. */
    RECLAIM("reclaim"),
    NIL("nil");

    private final String code;

    Direction(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
