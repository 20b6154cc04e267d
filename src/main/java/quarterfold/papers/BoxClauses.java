package quarterfold.papers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.law.TableRows;

/** What a treatment adds to the boxes, in words. */
final class BoxClauses {

    /**
     * The columns put into the sentence, or that are no condition; what another column says is a
     * condition added to it.
     */
    private static final Set<String> SPOKEN =
            Set.of("treatment", "box", "measure", "sign", "account", "from", "to", "source");

    private final LawView view;

    BoxClauses(LawView view) {
        this.view = view;
    }

    /** The rows of {@code boxes.csv} for a row of {@code treatments.csv}, while it is in force. */
    List<TableRows.Row> of(TableRows.Row treatment) {
        return view.rows(LawView.BOXES).stream()
                .filter(b -> b.cell("treatment").equals(treatment.cell("treatment")))
                .filter(b -> b.overlaps(treatment))
                .toList();
    }

    /** Such as {@code adds the VAT to box 1 and the value without VAT to box 6}. */
    String text(TableRows.Row treatment) {
        Map<String, List<TableRows.Row>> alike = new LinkedHashMap<>();
        for (TableRows.Row box : of(treatment)) {
            alike.computeIfAbsent(
                            box.cell("sign") + condition(box, treatment), k -> new ArrayList<>())
                    .add(box);
        }
        return alike.isEmpty()
                ? "none"
                : alike.values().stream()
                        .map(boxes -> clause(boxes, treatment))
                        .collect(Collectors.joining("; "));
    }

    private String clause(List<TableRows.Row> boxes, TableRows.Row treatment) {
        boolean adds = boxes.get(0).cell("sign").equals("plus");
        Map<String, List<String>> byMeasure = new LinkedHashMap<>();
        boxes.forEach(
                b ->
                        byMeasure
                                .computeIfAbsent(b.cell("measure"), m -> new ArrayList<>())
                                .add(b.cell("box")));
        List<String> parts =
                byMeasure.entrySet().stream()
                        .map(
                                m ->
                                        view.words().say("measure", m.getKey())
                                                + (adds ? " to " : " from ")
                                                + places(m.getValue()))
                        .toList();
        return (adds ? "adds " : "takes ") + Words.all(parts) + condition(boxes.get(0), treatment);
    }

    /** Such as {@code boxes 6 and 8}, or {@code the total exempt-supplies}. */
    private String places(List<String> names) {
        List<String> totals =
                view.rows(LawView.TOTALS).stream()
                        .map(r -> r.cell("total"))
                        .filter(names::contains)
                        .toList();
        List<String> boxes = names.stream().filter(n -> !totals.contains(n)).toList();
        List<String> places = new ArrayList<>();
        if (!boxes.isEmpty()) {
            places.add((boxes.size() == 1 ? "box " : "boxes ") + Words.all(boxes));
        }
        totals.forEach(t -> places.add("the total " + t));
        return Words.all(places);
    }

    /**
     * What else must hold: another column's value, and days that are not all of the treatment's.
     */
    private String condition(TableRows.Row box, TableRows.Row treatment) {
        Stream<String> columns =
                view.table(LawView.BOXES).orElseThrow().columns().stream()
                        .filter(c -> !SPOKEN.contains(c) && !box.cell(c).isEmpty())
                        .map(c -> view.words().clause(c, Cells.values(box.cell(c))));
        Stream<String> days =
                box.covers(treatment) ? Stream.empty() : Stream.of(LawView.inForce(box));
        String all = Stream.concat(columns, days).collect(Collectors.joining(", "));
        return all.isEmpty() ? "" : " (" + Markdown.plain(all) + ")";
    }

    /** Whether the second treatment takes from each box what the first adds, and nothing else. */
    boolean mirror(TableRows.Row treatment, TableRows.Row other) {
        return of(treatment).stream()
                .map(b -> without(b, b.cell("sign").equals("plus") ? "minus" : "plus"))
                .toList()
                .equals(of(other).stream().map(b -> without(b, b.cell("sign"))).toList());
    }

    /** The cells of a row without the treatment's name, and with this sign. */
    private static Map<String, String> without(TableRows.Row box, String sign) {
        Map<String, String> cells = new LinkedHashMap<>(box.cells());
        cells.remove("treatment");
        cells.put("sign", sign);
        return cells;
    }
}
