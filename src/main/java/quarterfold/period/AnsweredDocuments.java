package quarterfold.period;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.ledger.Decision;
import quarterfold.ledger.Decision.Action;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;
import quarterfold.treatment.Answers;

/**
 * Questions about a document that decisions about its entries have answered, so that what they say
 * of its VAT is so no more: that it was seen, whose it is, or how it is treated.
 */
final class AnsweredDocuments {

    /**
     * What answers a question.
     *
     * @param asked whether it is about the entry, as it was entered
     * @param answer whether a decision on such an entry answers it
     */
    private record Answer(Predicate<Entry> asked, Predicate<Decision> answer) {}

    private static final Set<Action> SETTLED =
            Set.of(Action.TREAT_AS, Action.DISALLOW, Action.DUPLICATE_OF);

    private static final Answer SEEN =
            new Answer(
                    entry -> entry.profile().evidence() == Evidence.UNSTATED,
                    d -> d.action() == Action.EVIDENCE_SEEN || SETTLED.contains(d.action()));
    private static final Answer WHOSE = new Answer(entry -> true, d -> isOfWhom(d) || isSettled(d));
    private static final Answer BELOW_NOTHING =
            new Answer(SEEN.asked(), d -> d.action() == Action.EVIDENCE_SEEN || isSettled(d));
    private static final Answer TREATED =
            new Answer(
                    entry -> entry.kind() == Kind.EXPENSE || entry.kind() == Kind.EXPENSE_CREDIT,
                    d -> d.action() == Action.TREAT_AS || d.action() == Action.DUPLICATE_OF);

    private static final Map<String, Answer> ANSWERS =
            Map.of(
                    RaisedQuery.DOCUMENT_DOES_NOT_TIE, SEEN,
                    RaisedQuery.DOCUMENT_NOT_WHOLE, SEEN,
                    RaisedQuery.DOCUMENT_PAGES_DIFFER, SEEN,
                    RaisedQuery.CREDIT_BELOW_NOTHING, BELOW_NOTHING,
                    RaisedQuery.DOCUMENT_OF_OTHERS, WHOSE,
                    RaisedQuery.GOODS_OR_SERVICE, TREATED);

    private final Ledger ledger;
    private final Answers answers;
    private final Map<Long, Source> sources;

    AnsweredDocuments(Ledger ledger, Answers answers) {
        this.ledger = ledger;
        this.answers = answers;
        sources =
                ledger.sources().stream()
                        .collect(Collectors.toMap(Source::id, Function.identity()));
    }

    /** Set aside too, where the same is asked about the entry. */
    private static boolean isSettled(Decision decision) {
        return SETTLED.contains(decision.action()) || decision.action() == Action.SET_ASIDE;
    }

    private static boolean isOfWhom(Decision decision) {
        return decision.action() == Action.STATE && decision.value().startsWith("addressed=");
    }

    /** Whether each entry that the question is about is decided on. */
    boolean answer(RaisedQuery raised) {
        Optional<Answer> answer = Optional.ofNullable(ANSWERS.get(raised.code()));
        Optional<Source> source = Optional.ofNullable(sources.get(raised.source()));
        return answer.isPresent() && source.isPresent() && isDecided(answer.get(), source.get());
    }

    private boolean isDecided(Answer answer, Source source) {
        List<Entry> asked = asked(answer, source);
        return !asked.isEmpty()
                && asked.stream().allMatch(e -> aboutItself(e).anyMatch(answer.answer()));
    }

    /** What was decided of a supplier may be older than its document. */
    private Stream<Decision> aboutItself(Entry entry) {
        return answers.about(entry).stream().filter(d -> d.target() == Decision.Target.ENTRY);
    }

    /** The entries it is about: those with VAT, where there are some. */
    private List<Entry> asked(Answer answer, Source source) {
        int count = Math.toIntExact(source.entries());
        List<Entry> all =
                ledger.entries(source, source.firstEntry(), count).stream()
                        .filter(answer.asked())
                        .toList();
        List<Entry> taxed =
                all.stream()
                        .filter(e -> e.amounts().vat().filter(v -> !v.isZero()).isPresent())
                        .toList();
        return taxed.isEmpty() ? all : taxed;
    }
}
