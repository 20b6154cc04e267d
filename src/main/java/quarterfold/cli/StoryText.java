package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Function;
import quarterfold.law.Total;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Attachment;
import quarterfold.ledger.Coded;
import quarterfold.ledger.Entry;
import quarterfold.ledger.KindDecisions;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Returns;
import quarterfold.treatment.Conversion;
import quarterfold.treatment.EvidenceGrade;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** One entry's story: where it came from, what it says, how it was treated, what it adds where. */
final class StoryText {

    private final PrintWriter out;

    private StoryText(PrintWriter out) {
        this.out = out;
    }

    /** The occasions are of one entry; at least one. */
    static void print(List<Treated> occasions, OpenBook book, PrintWriter out) {
        StoryText story = new StoryText(out);
        story.entry(occasions.get(0), book);
        occasions.forEach(treated -> story.print(treated, book));
    }

    private void entry(Treated treated, OpenBook book) {
        Line line = treated.entry().line();
        out.printf(
                "Entry %d: %s of %s%n%n",
                treated.entry().number(), kind(treated.entry(), book), Texts.day(line.taxPoint()));
        book.ledger().sources().stream()
                .filter(s -> s.id() == treated.entry().source())
                .forEach(source -> origin(source, line));
        book.ledger()
                .kinds()
                .of(treated.entry().number())
                .ifPresent(
                        d ->
                                said(
                                        "Kind",
                                        "%s by decision %d, as %s said on %s: %s"
                                                .formatted(
                                                        KindDecisions.kind(d)
                                                                .map(Coded::code)
                                                                .orElse(d.value()),
                                                        d.id(),
                                                        d.who(),
                                                        d.day(),
                                                        d.why())));
        stated(line);
        book.ledger().attachments().of(treated.entry()).forEach(a -> document(a, book));
    }

    /** What it is now: a close may have had it as something else. */
    private static String kind(Entry entry, OpenBook book) {
        return book.ledger().entry(entry.number()).orElse(entry).kind().code();
    }

    private void document(Attachment document, OpenBook book) {
        said(
                "Document kept",
                book.book()
                        .archive()
                        .named(document.sha256())
                        .map(
                                path ->
                                        "%s, as sources/%s"
                                                .formatted(document.file(), path.getFileName()))
                        .orElse(document.file() + ", which is missing in sources"));
    }

    private void print(Treated treated, OpenBook book) {
        out.printf(
                "%nTreated as %s by rule %s: %s.%n",
                treated.treatment(), treated.rule(), treated.why());
        said("Authority", treated.citation());
        said("Rate", treated.rate());
        treated.conversion().ifPresent(c -> exchange(c, book));
        said("Value without VAT", Texts.money(treated.net()));
        said("VAT", Texts.money(treated.vat()));
        said("VAT reclaimed", treated.claim().isZero() ? "" : Texts.money(treated.claim()));
        treated.evidence().ifPresent(this::evidence);
        if (treated.boxes().isEmpty()) {
            out.println("  It is in no box.");
        }
        new TreeMap<>(treated.boxes())
                .forEach((box, amount) -> said(adds(box, treated, book), Texts.money(amount)));
        if (treated.takenUp() != TakenUp.IN_ITS_PERIOD && treated.takenUp() != TakenUp.NOWHERE) {
            said("Belongs to", belongsTo(treated, book));
            said("Taken up", treated.takenUp().words());
        }
        said("Period", period(treated, book));
        treated.queries()
                .forEach(
                        q ->
                                out.printf(
                                        "%nOpen query %s:%n  %s%n",
                                        Texts.plain(q.id()), Texts.cell(q.question(), 1_000)));
    }

    private static String adds(String box, Treated treated, OpenBook book) {
        return book.law().totals(treated.occasion().day()).stream()
                .filter(t -> t.name().equals(box))
                .findFirst()
                .map(Total::words)
                .orElse("Adds to box " + box);
    }

    private void exchange(Conversion conversion, OpenBook book) {
        said("Exchange rate", conversion.quoted());
        said("", conversion.source(Texts.files(book.ledger().sources())));
        said("In " + conversion.home(), Texts.money(conversion.money()));
    }

    private void evidence(EvidenceGrade evidence) {
        said("Evidence", evidence.grade().code());
        evidence.reasons().forEach(reason -> said("", reason));
    }

    private static String period(Treated treated, OpenBook book) {
        Returns returns = book.returns();
        return returns.takenUpIn(treated)
                .map(p -> p.name() + (returns.isClosed(p.name()) ? ", closed" : ", open"))
                .orElse("none: " + outside(treated, book));
    }

    private static String outside(Treated treated, OpenBook book) {
        return treated.occasion().day().isBefore(book.book().settings().registeredFrom())
                ? "before the registration"
                : "after the registration, or too late for it";
    }

    /** The period its tax point is in, where the return that takes it up is another. */
    private static String belongsTo(Treated treated, OpenBook book) {
        return book.returns()
                .calendar()
                .of(treated.entry().taxPoint())
                .map(p -> p.name().toString())
                .orElse("");
    }

    private void origin(Source source, Line line) {
        said("From", "%s, row %d".formatted(Texts.cell(source.name(), 200), line.row()));
        said("Read as", source.layout());
        said("SHA-256", source.sha256());
    }

    private void stated(Line line) {
        Profile profile = line.profile();
        said("Document", line.document());
        said("Statement month", particular(line, Particular.STATEMENT_MONTH));
        said("Amended", particular(line, Particular.AMENDED));
        said("Advance", particular(line, Particular.ADVANCE));
        said("Paid before it", particular(line, Particular.PREPAID));
        said("Follows", particular(line, Particular.FOLLOWS));
        said("Party", profile.party());
        said("Party's country", profile.partyCountry());
        said("Party's VAT number", profile.partyVat());
        said("Channel", profile.channel());
        said("Settlement", profile.settlement());
        said("Order", line.order());
        said("Product", line.item().product());
        said("Description", line.item().description());
        said("Category", profile.category());
        said("Goods from", profile.from());
        said("Goods to", profile.to());
        said("Evidence", profile.evidence().code());
        said("Printed", printed(line));
        said("As the file wrote it", line.original());
        said("Paid", line.paid().map(Texts::day).orElse(""));
        said("Account", line.particulars().word(Particular.ACCOUNT).orElse(""));
        said("Notes", line.notes());
    }

    private static String particular(Line line, Particular particular) {
        return line.particulars().word(particular).orElse("");
    }

    private static String printed(Line line) {
        Amounts amounts = line.amounts();
        Function<Amount, String> money = Texts::money;
        String rate =
                line.profile().rate().isStated() ? ", rate " + line.profile().rate().code() : "";
        return "net %s, VAT %s, gross %s, %s%s"
                .formatted(
                        amounts.net().map(money).orElse("-"),
                        amounts.vat().map(money).orElse("-"),
                        amounts.gross().map(money).orElse("-"),
                        line.profile().currency(),
                        rate);
    }

    private void said(String what, String text) {
        if (!text.isEmpty()) {
            out.printf("  %-22s %s%n", what, Texts.cell(text, 1_000));
        }
    }
}
