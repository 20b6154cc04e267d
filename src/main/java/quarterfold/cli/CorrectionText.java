package quarterfold.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import quarterfold.money.Amount;
import quarterfold.money.Rounding;
import quarterfold.period.Correction;
import quarterfold.period.CorrectionSheet;
import quarterfold.treatment.TakenUp;

/** What a return takes up of earlier periods, in a few lines. */
final class CorrectionText {

    private static final int WIDTH = 78;

    private CorrectionText() {}

    static void print(CorrectionSheet sheet, PrintWriter out) {
        if (sheet.isEmpty()) {
            return;
        }
        out.printf("%nFrom earlier periods:%n");
        taken(sheet, TakenUp.LATE_CLAIM, "Late claims", out);
        taken(sheet, TakenUp.TRUED_UP, "Estimates trued up", out);
        errors(sheet, out);
        taken(sheet, TakenUp.NIL_NET, "Import errors, the same due and reclaimed", out);
        apart(sheet, out);
        List<Correction> old = sheet.rows(TakenUp.TOO_OLD);
        if (!old.isEmpty()) {
            said(
                    out,
                    "Errors too old to be put right, in no box: %s, net %s."
                            .formatted(count(old), Texts.money(sheet.net(old))));
        }
    }

    private static void taken(CorrectionSheet sheet, TakenUp how, String what, PrintWriter out) {
        List<Correction> rows = sheet.rows(how);
        if (!rows.isEmpty()) {
            said(out, "%s: %s; %s.".formatted(what, count(rows), boxes(sheet, rows)));
        }
    }

    private static void errors(CorrectionSheet sheet, PrintWriter out) {
        List<Correction> rows = sheet.rows(TakenUp.ERROR);
        if (!rows.isEmpty()) {
            said(
                    out,
                    "Errors of closed returns put right: %s; %s. Net %s%s."
                            .formatted(
                                    count(rows),
                                    boxes(sheet, rows),
                                    Texts.money(sheet.net(rows)),
                                    limit(sheet)));
        }
    }

    private static void apart(CorrectionSheet sheet, PrintWriter out) {
        List<Correction> rows = sheet.rows(TakenUp.DISCLOSED);
        if (!rows.isEmpty()) {
            said(
                    out,
                    "NOT on this return: %s of closed returns, output side %s, input side %s, net %s%s. Tell the tax authority separately; the worksheet of corrections lists them."
                            .formatted(
                                    Texts.count(rows.size(), "error", "errors"),
                                    Texts.money(sheet.output(rows)),
                                    Texts.money(sheet.input(rows)),
                                    Texts.money(sheet.net(rows)),
                                    limit(sheet)));
        }
    }

    private static String limit(CorrectionSheet sheet) {
        return sheet.limit()
                .map(l -> "; the limit is %s, %s".formatted(Texts.money(l.amount()), l.why()))
                .orElse("");
    }

    private static String count(List<Correction> rows) {
        return Texts.count(rows.size(), "entry", "entries");
    }

    private static String boxes(CorrectionSheet sheet, List<Correction> rows) {
        Map<String, Amount> boxes = sheet.boxes(rows);
        String words =
                boxes.entrySet().stream()
                        .map(
                                b ->
                                        "box %s %s"
                                                .formatted(
                                                        b.getKey(),
                                                        Texts.money(
                                                                b.getValue()
                                                                        .rounded(
                                                                                Rounding
                                                                                        .NEAREST_PENNY))))
                        .collect(Collectors.joining(", "));
        return words.isEmpty() ? "no box" : words;
    }

    private static void said(PrintWriter out, String text) {
        Texts.wrapped(text, WIDTH).forEach(line -> out.printf("  %s%n", line));
    }
}
