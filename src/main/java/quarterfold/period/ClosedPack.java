package quarterfold.period;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import quarterfold.law.Dated;
import quarterfold.law.Law;
import quarterfold.law.TreatmentRow;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Close;
import quarterfold.ledger.ClosedEntry;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Entry;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Ledger;
import quarterfold.ledger.SetAside;
import quarterfold.ledger.Settings;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.treatment.Cause;
import quarterfold.treatment.Conversion;
import quarterfold.treatment.EvidenceGrade;
import quarterfold.treatment.Occasion;
import quarterfold.treatment.Query;
import quarterfold.treatment.Share;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/**
 * The papers of a closed period: what the close froze, with the tables and settings it was closed
 * with.
 */
final class ClosedPack implements Pack {

    private final Ledger ledger;
    private final Close close;
    private final VatReturn vatReturn;
    private final Law law;
    private final Map<Long, List<Query>> queries;
    private final Map<Long, Optional<HeldRate>> rates = new HashMap<>();

    ClosedPack(Ledger ledger, Close close) {
        this.ledger = ledger;
        this.close = close;
        this.vatReturn = ClosedReturn.of(close, ledger.corrections(close.period()));
        this.law = ClosedReturn.law(close);
        this.queries =
                vatReturn.queries().stream()
                        .filter(q -> q.entry().isPresent())
                        .collect(Collectors.groupingBy(q -> q.entry().getAsLong()));
    }

    @Override
    public Settings settings() {
        return close.settings();
    }

    @Override
    public VatReturn vatReturn() {
        return vatReturn;
    }

    @Override
    public Law law() {
        return law;
    }

    @Override
    public List<Source> sources() {
        return Returns.sourcesIn(ledger, vatReturn, close.settings().registeredFrom()).stream()
                .filter(s -> s.firstEntry() <= close.lastEntry())
                .toList();
    }

    @Override
    public Optional<Source> source(long id) {
        return ledger.sources().stream().filter(s -> s.id() == id).findFirst();
    }

    @Override
    public List<SetAside> setAside() {
        return sources().stream().flatMap(s -> ledger.setAside(s.id()).stream()).toList();
    }

    @Override
    public List<Attachment> attachments() {
        return sources().stream().flatMap(s -> ledger.attachments().of(s).stream()).toList();
    }

    @Override
    public Map<String, Amount> otherRounding() {
        return close.otherRounding();
    }

    @Override
    public void forEachTreated(Consumer<Treated> each) {
        ledger.forEachClosed(
                close.period(), (entry, closed) -> each.accept(treated(entry, closed)));
    }

    /** An entry with what the close froze of it. */
    Treated treated(Entry entry, ClosedEntry closed) {
        Optional<Dated<TreatmentRow>> rule = law.treatments().rule(closed.rule());
        return new Treated(
                new Occasion(entry, closed.day(), coded(Cause.class, closed.cause()), Share.WHOLE),
                coded(TakenUp.class, closed.takenUp()),
                closed.treatment(),
                closed.rule(),
                rule.map(r -> r.value().why()).orElse("No rule of the table fits this entry"),
                rule.map(Dated::source).orElse(""),
                closed.rate(),
                closed.net(),
                closed.vat(),
                closed.claim(),
                closed.boxes(),
                queries.getOrDefault(entry.number(), List.of()),
                EvidenceGrade.parse(closed.evidence()),
                Conversion.parse(
                        closed.exchange(),
                        entry.profile().currency(),
                        close.settings().currency(),
                        id -> rates.computeIfAbsent(id, ledger.rates()::find)));
    }

    private static <E extends Enum<E> & Coded> E coded(Class<E> type, String code) {
        return Coded.find(type, code)
                .orElseThrow(
                        () ->
                                new IllegalStateException(
                                        "the close holds the %s '%s', which this program does not know"
                                                .formatted(type.getSimpleName(), code)));
    }
}
