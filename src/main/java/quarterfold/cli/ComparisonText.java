package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import quarterfold.law.Box;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.period.BoxFigure;
import quarterfold.period.Comparison;
import quarterfold.period.Direction;
import quarterfold.period.VatReturn;

/** A return beside earlier ones, and what explains the change. */
final class ComparisonText {

    private static final String ROW = "  %-5s%16s%16s%16s%n";
    private static final String CHANGE = "    %-34s %16s%9s%9s%n";
    private static final int MOST = 5;

    private final PrintWriter out;

    ComparisonText(PrintWriter out) {
        this.out = out;
    }

    void print(
            VatReturn now,
            Settings settings,
            Optional<Comparison> before,
            Optional<Comparison> lastYear) {
        out.printf(
                "%s, %s%nVAT return %s, %s, beside earlier ones%n",
                Texts.plain(settings.name()),
                Texts.plain(settings.vatNumber()),
                now.period().name(),
                now.status().code());
        section("The period before", before);
        section("The same period last year", lastYear);
    }

    private void section(String heading, Optional<Comparison> found) {
        if (found.isEmpty()) {
            out.printf("%n%s: none, or nothing is in it.%n", heading);
            return;
        }
        Comparison comparison = found.get();
        VatReturn then = comparison.then();
        out.printf("%n%s, %s, %s%n%n", heading, then.period().name(), then.status().code());
        out.printf(
                ROW, "box", comparison.now().period().name(), then.period().name(), "difference");
        for (Comparison.BoxChange box : comparison.boxes()) {
            out.printf(
                    ROW,
                    box.now().box().id(),
                    Texts.grouped(box.now().text()),
                    Texts.grouped(box.then().text()),
                    signed(box.now().box(), box.difference()));
        }
        repaid(comparison.now());
        repaid(then);
        comparison.boxes().stream()
                .filter(b -> !b.treatments().isEmpty())
                .forEach(b -> explain(b, comparison));
    }

    private void repaid(VatReturn vatReturn) {
        if (vatReturn.direction() == Direction.RECLAIM) {
            out.printf("  In %s the money is to be repaid.%n", vatReturn.period().name());
        }
    }

    private void explain(Comparison.BoxChange box, Comparison comparison) {
        BoxFigure now = box.now();
        out.printf(
                "%n  What changed box %s by %s, before rounding:%n",
                now.box().id(), signed(now.exact().minus(box.then().exact())));
        out.printf(
                CHANGE,
                "treatment",
                "difference",
                comparison.now().period().name(),
                comparison.then().period().name());
        List<Comparison.TreatmentChange> changes = box.treatments();
        changes.stream()
                .limit(MOST)
                .forEach(
                        c ->
                                out.printf(
                                        CHANGE,
                                        c.treatment(),
                                        signed(c.difference()),
                                        Texts.grouped(Long.toString(c.entriesNow())),
                                        Texts.grouped(Long.toString(c.entriesThen()))));
        if (changes.size() > MOST) {
            Amount rest =
                    changes.stream()
                            .skip(MOST)
                            .map(Comparison.TreatmentChange::difference)
                            .reduce(Amount.ZERO, Amount::plus);
            out.printf(
                    "    %-34s %16s%n",
                    Texts.count(changes.size() - MOST, "other treatment", "other treatments"),
                    signed(rest));
        }
        for (Comparison.Large large : box.largest()) {
            out.printf(
                    "    entry %-8s %-10s  %-24s %16s  %s%n",
                    large.treated().entry().number(),
                    large.treated().occasion().day(),
                    Texts.party(large.treated().entry().line(), 24),
                    Texts.money(large.adds()),
                    "in " + large.of().period().name());
        }
    }

    private static String signed(Box box, Amount difference) {
        return signed(difference, Texts.grouped(box.text(difference)));
    }

    private static String signed(Amount difference) {
        return signed(difference, Texts.money(difference));
    }

    private static String signed(Amount difference, String text) {
        return difference.signum() > 0 ? "+" + text : text;
    }
}
