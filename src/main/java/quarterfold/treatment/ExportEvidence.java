package quarterfold.treatment;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.ledger.StatedFacts;

/**
 * The time for holding evidence that goods left: three months from the time of supply. Without it
 * VAT is due in the period in which the time runs out; when the evidence comes later, the VAT is
 * taken back in the period it comes in. HMRC manual VEXP30300.
 */
final class ExportEvidence {

    private static final String LIMIT = "export-evidence";

    private final Law law;
    private final Map<String, Boolean> abroad = new HashMap<>();

    ExportEvidence(Law law) {
        this.law = law;
    }

    /** Whether goods of the profile may leave without evidence; the table decides if they do. */
    boolean mayBeAwaited(Profile profile) {
        return profile.evidence() != Evidence.EXPORT && isOfGoodsSentAbroad(profile);
    }

    /** Whether entries of the profile are of goods sold to another country. */
    boolean isOfGoodsSentAbroad(Profile profile) {
        return !profile.to().isEmpty()
                && profile.kind().side() == Kind.Side.SALES
                && abroad.computeIfAbsent(profile.to(), this::isAbroad);
    }

    private boolean isAbroad(String country) {
        String area = law.area(country, LocalDate.MAX); // at home now, at home ever
        return !area.equals("gb") && !area.equals("ni");
    }

    /**
     * The entry as it stands for its supply: with the evidence, where that came in time; without
     * it, where it came later, since then it is another occasion.
     */
    Entry asSupplied(Entry entry) {
        if (entry.line().particulars().isEmpty()) {
            return entry;
        }
        Optional<LocalDate> day = entry.line().particulars().day(Particular.EVIDENCED);
        if (day.isEmpty() || entry.kind().side() != Kind.Side.SALES) {
            return entry;
        }
        boolean inTime = lastDay(entry.taxPoint()).filter(day.get()::isAfter).isEmpty();
        Evidence evidence = inTime ? Evidence.EXPORT : Evidence.UNSTATED;
        return new Entry(
                entry.number(),
                entry.source(),
                StatedFacts.state(entry.line(), "evidence=" + evidence.code()));
    }

    private Optional<LocalDate> lastDay(LocalDate taxPoint) {
        return law.limit(LIMIT, taxPoint).map(Dated::value).map(l -> l.after(taxPoint));
    }

    /** The first tax point whose time can run out on the day or later. */
    LocalDate earliestFor(LocalDate day) {
        return law.limit(LIMIT, day)
                .map(
                        l ->
                                l.value()
                                        .before(day)
                                        .minusDays(3)) // months differ in length by three days
                .orElse(day);
    }

    /** What happens of a supply whose evidence is awaited, beside the supply. */
    List<Counted> after(List<Counted> supplied, LocalDate from, Optional<LocalDate> evidenced) {
        Optional<LocalDate> last = lastDay(from);
        if (last.isEmpty() || evidenced.filter(day -> !day.isAfter(last.get())).isPresent()) {
            return List.of();
        }
        Map<LocalDate, Counted> charged = new TreeMap<>();
        for (Counted part : supplied) {
            LocalDate day = part.day().isAfter(last.get()) ? part.day() : last.get();
            if (part.cause() == Cause.SUPPLY && evidenced.filter(e -> !e.isAfter(day)).isEmpty()) {
                charged.merge(
                        day,
                        new Counted(day, part.taxPoint(), Cause.EXPORT_TIME_UP, part.share()),
                        Counted::joined);
            }
        }
        List<Counted> all = new ArrayList<>(charged.values());
        if (evidenced.isPresent()) {
            charged.values().stream()
                    .reduce(Counted::joined)
                    .ifPresent(
                            c ->
                                    all.add(
                                            new Counted(
                                                    evidenced.get(),
                                                    c.taxPoint(),
                                                    Cause.EXPORT_EVIDENCED,
                                                    c.share())));
        }
        return all;
    }
}
