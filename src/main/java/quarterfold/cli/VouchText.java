package quarterfold.cli;

import java.io.PrintWriter;
import java.util.Map;
import java.util.TreeMap;
import quarterfold.ledger.Line;
import quarterfold.ledger.Source;
import quarterfold.money.Amount;
import quarterfold.period.Adjustment;
import quarterfold.period.BoxFigure;
import quarterfold.period.Pack;
import quarterfold.treatment.TakenUp;
import quarterfold.treatment.Treated;

/** Every entry that made a box, down to file and row, and the rules they rest on. */
final class VouchText {

    private static final String ROW = "%8s  %-10s  %-18s  %-24s  %16s  %-5s  %s%n";

    private final PrintWriter out;
    private final Pack pack;
    private final Map<Long, String> files = new TreeMap<>();

    /** A rule, and what it brought to the box. */
    private record Share(String why, String citation, long entries, Amount amount) {
        Share plus(Share other) {
            return new Share(why, citation, entries + other.entries, amount.plus(other.amount));
        }
    }

    VouchText(PrintWriter out, Pack pack) {
        this.out = out;
        this.pack = pack;
        pack.sources().forEach((Source s) -> files.put(s.id(), s.name()));
    }

    void box(String id) {
        BoxFigure box = pack.vatReturn().box(id);
        out.printf(
                "Box %s of %s: %s%n%s (exactly %s)%n%n",
                id,
                pack.vatReturn().period().name(),
                box.box().label(),
                Texts.grouped(box.text()),
                Texts.money(box.exact()));
        if (box.box().isComputed()) {
            out.printf(
                    "It is worked out from boxes %s: vouch those.%n",
                    String.join(" and ", box.box().formula().boxes()));
            return;
        }
        Map<String, Share> rules = new TreeMap<>();
        pack.forEachTreated(
                treated -> {
                    Amount adds = treated.boxes().get(id);
                    if (adds != null) {
                        if (rules.isEmpty()) {
                            out.printf(
                                    ROW,
                                    "entry",
                                    "date",
                                    "document",
                                    "party",
                                    "adds",
                                    "rule",
                                    "file and row");
                        }
                        row(treated, adds);
                        rules.merge(
                                treated.rule(),
                                new Share(treated.why(), treated.citation(), 1, adds),
                                Share::plus);
                    }
                });
        out.println(rules.isEmpty() ? "No entry adds to it." : "");
        pack.vatReturn().adjustments().forEach(a -> adjustment(a, id));
        rules.forEach(
                (rule, share) ->
                        out.printf(
                                "%-5s %s from %s%n      %s.%n      %s%n",
                                rule,
                                Texts.money(share.amount()),
                                Texts.count(share.entries(), "entry", "entries"),
                                share.why(),
                                share.citation()));
    }

    /** What adds to the box without being an entry. */
    private void adjustment(Adjustment adjustment, String box) {
        Amount adds = adjustment.boxes().get(box);
        if (adds != null) {
            out.printf(
                    "%s from %s, %s%n      %s%n      %s%n",
                    Texts.money(adds),
                    adjustment.treatment(),
                    adjustment.about(),
                    adjustment.why(),
                    adjustment.authority());
        }
    }

    private String file(long source) {
        return files.computeIfAbsent(
                source, id -> pack.source(id).map(Source::name).orElse("source " + id));
    }

    private void row(Treated treated, Amount adds) {
        Line line = treated.entry().line();
        out.printf(
                ROW,
                treated.entry().number(),
                line.taxPoint(),
                Texts.document(line, 18),
                Texts.party(line, 24),
                Texts.money(adds),
                treated.rule(),
                Texts.cell(files.getOrDefault(treated.entry().source(), ""), 60)
                        + " row "
                        + line.row()
                        + (treated.takenUp() == TakenUp.IN_ITS_PERIOD
                                ? ""
                                : ", " + treated.takenUp().code())
                        + Texts.exchange(treated, this::file));
    }
}
