package quarterfold.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.LongStream;
import quarterfold.ledger.AskedEntries;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Answers;
import quarterfold.treatment.Context;
import quarterfold.treatment.Query;
import quarterfold.treatment.Questions;

/**
 * The questions that the reading of files raised, for the period their files are of, as far as the
 * files that came and the decisions that were made since have not answered them.
 */
final class Raised {

    private final Ledger ledger;
    private final Context.Files files;
    private final Questions questions;
    private final AnsweredDocuments documents;
    private final LocalDate registeredFrom;

    Raised(
            Ledger ledger,
            Context.Files files,
            Questions questions,
            Answers answers,
            LocalDate registeredFrom) {
        this.ledger = ledger;
        this.files = files;
        this.questions = questions;
        this.documents = new AnsweredDocuments(ledger, answers);
        this.registeredFrom = registeredFrom;
    }

    /**
     * @param late the sources of entries that came after their period was closed and are taken up
     *     in this one
     */
    List<Query> of(Period period, Set<Long> late) {
        Set<Long> sources = new HashSet<>(late);
        Returns.sourcesIn(ledger, period, registeredFrom).stream()
                .map(Source::id)
                .forEach(sources::add);
        List<RaisedQuery> raised =
                new ArrayList<>(
                        ledger.raised().stream()
                                .filter(q -> sources.contains(q.source()))
                                .toList());
        new DecidedPayouts(ledger)
                .of(sources).stream()
                        .filter(q -> raised.stream().noneMatch(r -> r.name().equals(q.name())))
                        .forEach(raised::add);
        return new WholeSettlements(ledger)
                .open(raised).stream()
                        .filter(q -> !documents.answer(q) && !isKnown(q))
                        .map(this::query)
                        .map(questions::answered)
                        .toList();
    }

    /** Whether of each of its entries a decision says what it is. */
    private boolean isKnown(RaisedQuery raised) {
        List<AskedEntries> asked = ledger.asked(raised.name());
        KindDecisions kinds = ledger.kinds();
        return !asked.isEmpty()
                && asked.stream()
                        .flatMapToLong(run -> LongStream.rangeClosed(run.first(), run.last()))
                        .allMatch(number -> kinds.of(number).isPresent());
    }

    private Query query(RaisedQuery raised) {
        return new Query(
                raised.name().toString(),
                OptionalLong.empty(),
                files.name(raised.source()),
                raised.question(),
                Amount.ZERO);
    }
}
