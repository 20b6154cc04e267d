package quarterfold.period;

import java.util.List;
import java.util.OptionalLong;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Context;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;

/** The questions that the reading of files raised, for the period their files are of. */
final class Raised {

    private final Ledger ledger;
    private final Context.Files files;
    private final Questions questions;

    Raised(Ledger ledger, Context.Files files, Questions questions) {
        this.ledger = ledger;
        this.files = files;
        this.questions = questions;
    }

    List<Query> of(Period period) {
        List<Long> sources = Returns.sourcesIn(ledger, period).stream().map(Source::id).toList();
        return ledger.raised().stream()
                .filter(q -> sources.contains(q.source()))
                .map(this::query)
                .map(questions::answered)
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
