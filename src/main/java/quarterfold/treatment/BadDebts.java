package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Profile;

/**
 * The time for claiming relief on a debt: not before six months, and not after four years and six
 * months, from the later of the supply and the day payment was due. VAT Regulations 1995 reg 165A,
 * VAT Notice 700/18, HMRC manual VR7420.
 */
final class BadDebts {

    private static final String RELIEF = "bad-debt-relief";

    private BadDebts() {}

    /** Whether entries of the profile claim relief. */
    static boolean isRelief(Profile profile) {
        return profile.kind() == Kind.OTHER_MONEY && profile.category().equals(RELIEF);
    }

    /** A word of {@link quarterfold.law.Fact#IN_TIME} for a claim made on the entry's date. */
    static String inTime(Entry entry, Law law) {
        Particulars stated = entry.line().particulars();
        Optional<LocalDate> later =
                Stream.of(Particular.DUE, Particular.SENT)
                        .flatMap(p -> stated.day(p).stream())
                        .max(LocalDate::compareTo);
        if (later.isEmpty()) {
            return "unstated";
        }
        LocalDate claimed = entry.taxPoint();
        if (end("bad-debt-wait", claimed, later.get(), law).filter(claimed::isBefore).isPresent()) {
            return "early";
        }
        return end("bad-debt-limit", claimed, later.get(), law).filter(claimed::isAfter).isPresent()
                ? "no"
                : "yes";
    }

    private static Optional<LocalDate> end(String limit, LocalDate on, LocalDate from, Law law) {
        return law.limit(limit, on).map(Dated::value).map(l -> l.after(from));
    }
}
