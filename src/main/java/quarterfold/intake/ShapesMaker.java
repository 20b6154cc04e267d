package quarterfold.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import quarterfold.intake.Layout.OtherRow;

/** Makes the layout of a file whose rows have several shapes, each studied beside the others. */
final class ShapesMaker implements Making {
    private final ShapeFinder.Shapes shapes;
    private final Vocabulary words;
    private final Findings findings;
    private final List<LayoutMaker> makers = new ArrayList<>();
    private boolean studied;

    ShapesMaker(
            ShapeFinder.Shapes shapes,
            boolean nativeDates,
            Vocabulary words,
            NumberText text,
            KindFinder kinds,
            Findings findings) {
        this.shapes = shapes;
        this.words = words;
        this.findings = findings;
        for (ShapePart part : shapes.parts()) {
            Findings own = findings.of(part.scope(), part.label());
            makers.add(new LayoutMaker(part, nativeDates, words, text, kinds, own));
        }
    }

    @Override
    public List<String> found() {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < makers.size(); i++) {
            String label = shapes.parts().get(i).label();
            makers.get(i).found().forEach(f -> found.add(label + ": " + f));
        }
        return found;
    }

    @Override
    public Optional<Layout> make(String name, String file) {
        boolean begun = true;
        for (LayoutMaker maker : makers) {
            begun &= maker.begin();
        }
        studied = begun;
        for (LayoutMaker maker : begun ? makers : List.<LayoutMaker>of()) {
            studied &= maker.study(file, makers.stream().filter(m -> m != maker).toList());
        }
        if (!studied || isSummary()) {
            return Optional.empty();
        }
        WholeStudy whole = new WholeStudy(makers, words, findings);
        shapes.above().forEach(whole::above);
        List<Layout> layouts = new ArrayList<>();
        for (int i = 0; i < makers.size(); i++) {
            List<OtherRow> others =
                    shapes.parts().get(i).isTable() ? round(i, whole) : marked(i, whole);
            layouts.add(makers.get(i).layout(name, others, currency(makers.get(i))));
        }
        Set<String> blanks = new LinkedHashSet<>();
        layouts.forEach(l -> blanks.addAll(l.shape().blanks()));
        Layout made = layouts.get(0).with(blanks, layouts.subList(1, layouts.size()));
        return Optional.of(AboveStudy.of(shapes.above(), made, whole.money(), words, findings));
    }

    /** Whether a lower table says again what one above it comes to, so that it holds no money. */
    boolean isSummary() {
        for (int i = 1; studied && i < makers.size(); i++) {
            long all = makers.get(i).money().all();
            for (LayoutMaker above : makers.subList(0, i)) {
                if (shapes.parts().get(i).isTable() && above.money().known(all).isPresent()) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The rows round a table; the last ones may be of the whole file. */
    private List<OtherRow> round(int at, WholeStudy whole) {
        LayoutMaker maker = makers.get(at);
        List<Grid.Line> own = new ArrayList<>();
        List<OtherRow> others = new ArrayList<>();
        for (Grid.Line line : maker.table().others()) {
            Optional<OtherRow> claimed =
                    at + 1 < makers.size() ? Optional.empty() : whole.claim(line, maker);
            claimed.ifPresentOrElse(others::add, () -> own.add(line));
        }
        others.addAll(maker.round(own));
        others.sort(Comparator.comparingInt((OtherRow o) -> o.starts().length()).reversed());
        return others;
    }

    /** Column names among rows known by a text, and with the first shape all rows of no shape. */
    private List<OtherRow> marked(int at, WholeStudy whole) {
        List<OtherRow> others = new ArrayList<>();
        if (at == 0) {
            others.addAll(whole.loose(shapes.loose(), shapes.parts().get(0).table().grid()));
        }
        shapes.parts()
                .get(at)
                .names()
                .ifPresent(
                        names ->
                                others.add(
                                        new OtherRow(
                                                "",
                                                "",
                                                List.of(),
                                                Map.of("#2", List.of(names.cell(1))),
                                                List.of(),
                                                false,
                                                false,
                                                "column names")));
        return others;
    }

    /** What the rows say of their currency; else what the others say; asked where they differ. */
    private Optional<String> currency(LayoutMaker maker) {
        Optional<String> own = maker.currency();
        Set<String> codes = new LinkedHashSet<>();
        makers.forEach(m -> codes.addAll(m.currencies()));
        if (own.isPresent() || !maker.currencies().isEmpty() || codes.isEmpty()) {
            return own;
        }
        if (codes.size() == 1) {
            return codes.stream().findFirst();
        }
        return maker.findings()
                .ask(
                        new Question(
                                "currency-of-these",
                                "other rows of the file are in %s; which one currency are these in?"
                                        .formatted(String.join(" and ", codes)),
                                List.copyOf(codes),
                                true));
    }
}
