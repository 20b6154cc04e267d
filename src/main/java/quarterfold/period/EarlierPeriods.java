package quarterfold.period;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Close;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Context;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Timing;
import quarterfold.treatment.Treated;
import quarterfold.treatment.TreatmentRun;

/**
 * What the return of a period takes up of earlier ones. What is wrong in closed returns goes to one
 * period alone: the one after the latest that is closed, in which it counts as discovered.
 */
final class EarlierPeriods {

    private final Ledger ledger;
    private final Calendar calendar;

    EarlierPeriods(Ledger ledger, Calendar calendar) {
        this.ledger = ledger;
        this.calendar = calendar;
    }

    /** The period that takes up what is wrong in closed ones; none is closed, or it has ended. */
    Optional<Period> takesUp() {
        return new Closes(ledger.closes()).latest().flatMap(c -> calendar.of(c.end().plusDays(1)));
    }

    /** Whether closed returns are wrong in something that no return has taken up. */
    boolean hasAny(Context context) {
        return takesUp().filter(p -> !of(p, context).isEmpty()).isPresent();
    }

    /** What the period takes up, late entries first, then those decided otherwise since. */
    List<Wrong> of(Period period, Context context) {
        if (takesUp().filter(period::equals).isEmpty()) {
            return List.of();
        }
        Closes closes = new Closes(ledger.closes());
        Timing timing = new Timing(context);
        TrueUps trueUps = TrueUps.of(ledger, context);
        List<Wrong> wrong = new ArrayList<>();
        TreatmentRun run = new TreatmentRun(context);
        new LateEntries(
                        ledger,
                        new Occasions(ledger, timing, context.answers(), calendar.registeredFrom()),
                        timing,
                        calendar.registeredFrom())
                .of(closes.all())
                .forEach(late -> wrong.add(late(late, closes, run, trueUps)));
        ClosedRuns runs = new ClosedRuns(ledger, context, timing, trueUps);
        wrong.addAll(new ChangedEntries(ledger, context, timing, runs, closes).of(period.end()));
        return wrong;
    }

    private static Wrong late(Occasion late, Closes closes, TreatmentRun run, TrueUps trueUps) {
        Close close = closes.of(late.day()).orElseThrow();
        Treated treated = trueUps.apply(run.treat(late), run);
        return new Wrong(
                treated, late.day(), late.cause(), close, true, false, Map.of(), treated.boxes());
    }

    /**
     * A purchase in the period of the day its document was held, where its tax point is in a period
     * before, is a late claim.
     */
    Treated classed(Treated treated, Period period) {
        Kind kind = treated.entry().kind();
        boolean bought = kind.side() == Kind.Side.PURCHASES || kind == Kind.IMPORT_VAT_PAID;
        return bought
                        && treated.occasion().cause() == Cause.SUPPLY
                        && treated.takenUp() == TakenUp.IN_ITS_PERIOD
                        && treated.entry().taxPoint().isBefore(period.start())
                        && calendar.of(treated.entry().taxPoint()).isPresent()
                ? treated.takenUp(TakenUp.LATE_CLAIM, treated.boxes())
                : treated;
    }

    /** The worksheet's row for what the period takes up in the ordinary way, if it needs one. */
    Optional<Correction> row(Treated treated) {
        return switch (treated.takenUp()) {
            case LATE_CLAIM, TRUED_UP ->
                    calendar.of(treated.entry().taxPoint())
                            .map(
                                    p ->
                                            new Correction(
                                                    treated.entry().number(),
                                                    treated.occasion().day(),
                                                    treated.occasion().cause(),
                                                    p.name(),
                                                    treated.takenUp(),
                                                    Map.of(),
                                                    treated.boxes(),
                                                    treated.boxes(),
                                                    treated.takenUp().words()));
            default -> Optional.empty();
        };
    }
}
