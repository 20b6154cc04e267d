package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import quarterfold.law.Box;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.outlook.Deadlines;
import quarterfold.outlook.Interim;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Direction;
import quarterfold.period.VatReturn;

/** A return as people read it on a terminal. */
final class ReturnText {

    private static final int LABEL = 56;
    private static final int WORKING = 76;

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
        vatReturn.adjustments().forEach(a -> adjustment(a, out));
        out.printf("%n%s%n", direction(vatReturn));
        CorrectionText.print(vatReturn.corrections(), out);
        long queries = vatReturn.openQueries().size();
        if (queries > 0) {
            out.printf(
                    "%s: quarterfold queries %s%n",
                    Texts.count(queries, "query is open", "queries are open"),
                    vatReturn.period().name());
        }
    }

    /** What the return takes up beside its entries, with its whole working. */
    private static void adjustment(Adjustment adjustment, PrintWriter out) {
        out.printf(
                "%n%s, %s%s%n",
                Texts.plain(adjustment.treatment()),
                Texts.plain(adjustment.about()),
                new TreeMap<>(adjustment.boxes())
                        .entrySet().stream()
                                .map(b -> "; box " + b.getKey() + ": " + Texts.money(b.getValue()))
                                .collect(Collectors.joining()));
        Texts.wrapped(Texts.plain(adjustment.why()), WORKING)
                .forEach(line -> out.printf("  %s%n", line));
    }

    /**
     * What is left of a return's money after what was due within its period.
     *
     * @param within instalments, or payments on account
     */
    static void printInterims(VatReturn vatReturn, List<Interim> within, PrintWriter out) {
        if (within.isEmpty()) {
            return;
        }
        Amount due = within.stream().map(Interim::amount).reduce(Amount.ZERO, Amount::plus);
        Amount left = Deadlines.net(vatReturn).minus(due);
        out.printf(
                "%s within the period, together %s; %s %s.%n",
                Texts.count(within.size(), "payment is due", "payments are due"),
                Texts.money(due),
                Texts.money(left.abs()),
                left.signum() < 0 ? "is repaid where all were paid" : "is left to pay");
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
