package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.VatAccount;
import quarterfold.period.VatReturn;

/** A VAT account as people read it on a terminal. */
final class VatAccountText {

    private static final String ROW = "  %-58s %10s %16s%n";

    private VatAccountText() {}

    static void print(VatAccount account, Settings settings, PrintWriter out) {
        VatReturn vatReturn = account.vatReturn();
        out.printf(
                "%s, %s%nVAT account %s, %s to %s, %s%n",
                Texts.plain(settings.name()),
                Texts.plain(settings.vatNumber()),
                vatReturn.period().name(),
                Texts.day(vatReturn.period().start()),
                Texts.day(vatReturn.period().end()),
                vatReturn.status().code());
        half(account.payable(), vatReturn, out);
        half(account.allowable(), vatReturn, out);
    }

    private static void half(VatAccount.Half half, VatReturn vatReturn, PrintWriter out) {
        String portion = "VAT " + half.portion().code().toLowerCase(Locale.ROOT) + " portion";
        out.printf("%n" + ROW, portion, "entries", "VAT");
        for (VatAccount.Line line : half.lines()) {
            List<String> words = Texts.wrapped(line.line().label(), 56);
            words.subList(0, words.size() - 1).forEach(w -> out.printf("  %s%n", w));
            out.printf(
                    ROW,
                    words.get(words.size() - 1),
                    Texts.grouped(Long.toString(line.entries() + line.adjustments())),
                    Texts.money(line.amount()));
            out.printf("    %s%n", line.source());
        }
        out.printf(ROW, "Total", "", Texts.money(half.total()));
        out.printf(
                ROW,
                (half.boxes().size() == 1 ? "On the return: box " : "On the return: boxes ")
                        + String.join(" and ", half.boxes()),
                "",
                Texts.money(figure(half, vatReturn)));
    }

    private static Amount figure(VatAccount.Half half, VatReturn vatReturn) {
        return half.boxes().stream()
                .map(id -> vatReturn.box(id).figure())
                .reduce(Amount.ZERO, Amount::plus);
    }
}
