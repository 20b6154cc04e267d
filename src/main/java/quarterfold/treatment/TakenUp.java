package quarterfold.treatment;

import quarterfold.ledger.Coded;

/** How an occasion of an entry comes into a return. */
public enum TakenUp implements Coded {
    /** Its day is in the period. */
    IN_ITS_PERIOD("in-its-period", "in the period of its day"),
    /** A purchase of an earlier period whose document came only now: VAT Regulations reg 29(1). */
    LATE_CLAIM(
            "late-claim",
            "late claim: a purchase is reclaimed when its document is held (VAT Regulations 1995 reg 29(1))"),
    /** The statement of an import that was estimated: only the difference counts. */
    TRUED_UP(
            "trued-up",
            "estimate trued up: only the difference between the import's statement and its estimate counts, and it is no error (GOV.UK, Complete your VAT Return to account for import VAT)"),
    /** Its day is in a closed period, and that return was wrong without it: reg 34. */
    ERROR("error", "error of a closed return, put right on this one (VAT Regulations 1995 reg 34)"),
    /** An error that is the same in boxes 1 and 4, so that no limit is asked of it. */
    NIL_NET(
            "nil-net",
            "error of a closed return in the VAT of an import, the same due and reclaimed: put right on this one, whatever the limit (GOV.UK, Complete your VAT Return to account for import VAT)"),
    /** An error told to the tax authority apart, and in no box. */
    DISCLOSED(
            "disclosed",
            "error of a closed return, in no box: it must be told to the tax authority separately (VAT Regulations 1995 reg 34; VAT Notice 700/45)"),
    /** An error the law gives no more time for, in no box. */
    TOO_OLD(
            "too-old",
            "error of a closed return that is too old to be put right, in no box (VAT Regulations 1995 regs 29(1A) and 34(1A))"),
    /** A purchase before the registration whose VAT the first return may take: reg 111. */
    BEFORE_REGISTRATION("before-registration", "bought before the registration"),
    /** In no return. */
    NOWHERE("nowhere", "in no return");

    private final String code;
    private final String words;

    TakenUp(String code, String words) {
        this.code = code;
        this.words = words;
    }

    @Override
    public String code() {
        return code;
    }

    /** Which it is and why, for a person, with the authority. */
    public String words() {
        return words;
    }
}
