package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import quarterfold.law.Box;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Direction;
import quarterfold.period.VatReturn;

/** A return as people read it on a terminal. */
final class ReturnText {

    private static final int LABEL = 56;

    private ReturnText() {}

    static void print(VatReturn vatReturn, Settings settings, PrintWriter out) {
        out.printf(
                "%s, %s%nVAT return %s, %s to %s, %s%n%n",
                Texts.plain(settings.name()),
                Texts.plain(settings.vatNumber()),
                vatReturn.period().name(),
                Texts.day(vatReturn.period().start()),
                Texts.day(vatReturn.period().end()),
                vatReturn.status().code());
        for (BoxFigure box : vatReturn.boxes()) {
            List<String> words = Texts.wrapped(box.box().label(), LABEL);
            for (String line : words.subList(0, words.size() - 1)) {
                out.printf("  %s  %s%n", words.indexOf(line) == 0 ? box.box().id() : " ", line);
            }
            out.printf(
                    "  %s  %-" + LABEL + "s %16s%n",
                    words.size() == 1 ? box.box().id() : " ",
                    words.get(words.size() - 1),
                    Texts.grouped(box.text()));
        }
        out.printf("%n%s%n", direction(vatReturn));
        CorrectionText.print(vatReturn.corrections(), out);
        if (!vatReturn.queries().isEmpty()) {
            long queries = vatReturn.queries().size();
            out.printf(
                    "%s: quarterfold queries %s%n",
                    Texts.count(queries, "query is open", "queries are open"),
                    vatReturn.period().name());
        }
    }

    /** What to do, such as {@code Pay 1,670.00 by 7 November 2026.} */
    static String direction(VatReturn vatReturn) {
        Amount net =
                vatReturn.boxes().stream()
                        .filter(b -> b.box().formula().operation() == Box.Operation.GAP)
                        .map(BoxFigure::figure)
                        .findFirst()
                        .orElse(Amount.ZERO);
        String due = Texts.day(vatReturn.period().due());
        Direction direction = vatReturn.direction();
        return switch (direction) {
            case PAY -> "Pay %s by %s.".formatted(Texts.money(net), due);
            case RECLAIM ->
                    "%s to be repaid; the return is due by %s.".formatted(Texts.money(net), due);
            case NIL -> "Nothing to pay; the return is due by %s.".formatted(due);
        };
    }
}
