package quarterfold.period;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalLong;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Context;
import quarterfold.treatment.Query;

/** The questions that the reading of files raised, for the period their files are of. */
final class Raised {

    private final Ledger ledger;
    private final Context.Files files;
    private final LocalDate registeredFrom;

    Raised(Ledger ledger, Context.Files files, LocalDate registeredFrom) {
        this.ledger = ledger;
        this.files = files;
        this.registeredFrom = registeredFrom;
    }

    List<Query> of(Period period) {
        List<Long> sources =
                Returns.sourcesIn(ledger, period, registeredFrom).stream().map(Source::id).toList();
        return ledger.raised().stream()
                .filter(q -> sources.contains(q.source()))
                .map(this::query)
                .toList();
    }

    private Query query(RaisedQuery raised) {
        return new Query(
                "S%d/%s/%s".formatted(raised.source(), raised.code(), raised.about()),
                OptionalLong.empty(),
                files.name(raised.source()),
                raised.question(),
                Amount.ZERO);
    }
}
