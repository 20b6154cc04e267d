package quarterfold.treatment;

import quarterfold.ledger.Coded;

/** How an occasion of an entry comes into a return. */
public enum TakenUp implements Coded {
    /** Its day is in the period. */
    IN_ITS_PERIOD("in-its-period"),
    /** Its day is in a closed period, and the document came only now: VAT Regulations reg 29(1). */
    LATE_CLAIM("late-claim"),
    /** Its day is in a closed period, and that return was wrong without it: reg 34. */
    ERROR("error"),
    /** The same, above the limit: told to the tax authority apart, and in no box. */
    DISCLOSED("disclosed"),
    /** A purchase before the registration whose VAT the first return may take: reg 111. */
    BEFORE_REGISTRATION("before-registration"),
    /** In no return. */
    NOWHERE("nowhere");

    private final String code;

    TakenUp(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }
}
