package quarterfold.cli;

import static java.util.stream.Collectors.joining;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import quarterfold.intake.ImportResult;
import quarterfold.intake.ImportResult.AlreadyThere;
import quarterfold.intake.ImportResult.Entered;
import quarterfold.intake.ImportResult.NotEntered;
import quarterfold.intake.ImportResult.Refused;
import quarterfold.intake.Repeated;
import quarterfold.money.Amount;

/** What became of each file, a row each, and of all together: columns as wide as what they hold. */
final class ImportTable {
    private static final int WIDEST = 36;
    private static final int FIRST_FIGURE = 3;
    private static final int LAST_FIGURE = 6;
    private static final List<String> HEADINGS =
            List.of("file", "kind", "layout", "rows", "entries", "set aside", "money", "");

    private final List<ImportResult> results = new ArrayList<>();
    private final List<NotEntered> others = new ArrayList<>();
    private String home = "";

    /** {@code currency}: the book's, which is not shown beside money. */
    void home(String currency) {
        home = currency;
    }

    void add(ImportResult result) {
        if (result instanceof NotEntered other) {
            others.add(other);
        } else {
            results.add(result);
        }
    }

    /** Prints it: the files that are reports, then the others with the reason. */
    void print(PrintWriter out) {
        if (!results.isEmpty()) {
            rows(out);
        }
        if (!others.isEmpty()) {
            if (!results.isEmpty()) {
                out.println();
            }
            out.println("Not read as reports:");
            List<String> names = others.stream().map(o -> Texts.middle(o.name(), WIDEST)).toList();
            int width = names.stream().mapToInt(String::length).max().orElse(1);
            for (int i = 0; i < others.size(); i++) {
                out.printf(
                        "  %-" + width + "s  %s%n",
                        names.get(i),
                        Texts.cell(others.get(i).reason(), 200));
            }
        }
    }

    private void rows(PrintWriter out) {
        List<List<String>> rows = new ArrayList<>(List.of(HEADINGS));
        results.forEach(result -> rows.add(row(result)));
        if (results.size() > 1) {
            rows.add(total());
        }
        String format = format(rows);
        rows.forEach(row -> out.println(format.formatted(row.toArray()).stripTrailing()));
    }

    private static String format(List<List<String>> rows) {
        StringBuilder format = new StringBuilder();
        for (int i = 0; i < HEADINGS.size() - 1; i++) {
            int column = i;
            int width = rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(1);
            boolean figure = i >= FIRST_FIGURE && i <= LAST_FIGURE;
            format.append('%').append(figure ? "" : "-").append(Math.max(1, width)).append("s  ");
        }
        return format + "%s";
    }

    private List<String> row(ImportResult result) {
        return List.of(
                Texts.middle(result.name(), WIDEST),
                result.kind(),
                Texts.cell(result.layout(), WIDEST),
                grouped(result.rowsRead()),
                grouped(result.entries()),
                grouped(result.setAside()),
                result instanceof Entered entered ? money(entered) : "",
                outcome(result));
    }

    private String money(Entered entered) {
        if (entered.rates() > 0) {
            return "";
        }
        if (entered.currencies().size() > 1) {
            return String.join(", ", entered.currencies()); // a sum of them says nothing
        }
        String money = Texts.money(entered.source().moneyEntered());
        return isOfOneCurrency() && entered.currencies().stream().allMatch(home::equals)
                ? money
                : money + " " + String.join("", entered.currencies());
    }

    private static String outcome(ImportResult result) {
        if (result instanceof AlreadyThere there) {
            return "already there as source %d: nothing changed".formatted(there.source().id());
        }
        if (result instanceof Entered entered && entered.rates() > 0) {
            return Texts.count(entered.rates(), "rate", "rates");
        }
        if (result instanceof Entered entered) {
            return (isTied(entered) ? "ties" : "does not tie: asked")
                    + kept(entered.attached())
                    + repeated(entered.repeated());
        }
        return "refused: nothing was entered";
    }

    /** Whether no question says that a total the file states is not what its entries come to. */
    private static boolean isTied(Entered entered) {
        return entered.queries().stream().noneMatch(q -> q.code().endsWith("does-not-tie"));
    }

    private static String kept(long documents) {
        return documents == 0
                ? ""
                : ", %s kept with it".formatted(Texts.count(documents, "document", "documents"));
    }

    private static String repeated(Repeated repeated) {
        return repeated.rows() == 0
                ? ""
                : "; %s of earlier files, %s, entered once"
                        .formatted(
                                Texts.count(repeated.rows(), "row", "rows"),
                                Texts.money(repeated.money()));
    }

    private List<String> total() {
        long rows = 0;
        long entries = 0;
        long aside = 0;
        Amount money = Amount.ZERO;
        for (ImportResult result : results) {
            if (result instanceof Entered entered) {
                rows += entered.rowsRead();
                entries += entered.entries();
                aside += entered.setAside();
                money = money.plus(entered.source().moneyEntered());
            }
        }
        return List.of(
                Texts.count(results.size(), "file", "files"),
                "",
                "entered now",
                grouped(rows),
                grouped(entries),
                grouped(aside),
                total(money),
                outcomes());
    }

    private String total(Amount money) {
        if (!isOfOneCurrency()) {
            return "";
        }
        return currencies().allMatch(home::equals)
                ? Texts.money(money)
                : Texts.money(money) + " " + currencies().collect(joining());
    }

    private Stream<String> currencies() {
        return results.stream()
                .filter(Entered.class::isInstance)
                .flatMap(r -> ((Entered) r).currencies().stream())
                .distinct();
    }

    /** Money of several currencies is shown with them, and not added up. */
    private boolean isOfOneCurrency() {
        return currencies().count() <= 1;
    }

    private String outcomes() {
        List<String> outcomes = new ArrayList<>();
        count(r -> r instanceof Entered e && isTied(e), "tie", outcomes);
        count(r -> r instanceof Entered e && !isTied(e), "not", outcomes);
        count(AlreadyThere.class::isInstance, "already there", outcomes);
        count(Refused.class::isInstance, "refused", outcomes);
        return String.join(", ", outcomes);
    }

    private void count(Predicate<ImportResult> which, String word, List<String> outcomes) {
        long count = results.stream().filter(which).count();
        if (count > 0) {
            outcomes.add(grouped(count) + " " + word);
        }
    }

    private static String grouped(long number) {
        return Texts.grouped(Long.toString(number));
    }

    /** Whether any file was refused. */
    boolean refused() {
        return results.stream().anyMatch(Refused.class::isInstance);
    }
}
