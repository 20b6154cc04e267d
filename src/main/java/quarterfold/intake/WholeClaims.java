package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.intake.Layout.OtherRow;

/**
 * The rows below a single table that state what it comes to in a column of another meaning, such as
 * a payout below the prices, as their one amount.
 */
final class WholeClaims {
    private final List<OtherRow> claimed = new ArrayList<>();
    private final List<Grid.Line> left = new ArrayList<>();

    WholeClaims(LayoutMaker maker, Vocabulary words, Findings findings) {
        TableFinder.Found table = maker.table();
        WholeStudy whole = new WholeStudy(List.of(maker), words, findings);
        LineAmounts amounts = new LineAmounts(maker.numbers());
        boolean apart = table.dated().isEmpty() && table.record().isEmpty();
        for (Grid.Line line : table.others()) {
            boolean second = table.second().filter(s -> s.number() <= line.number()).isPresent();
            Optional<OtherRow> claim =
                    apart
                                    && !second
                                    && amounts.of(line).size() == 1
                                    && !words.isLabel(line.first(), "count")
                            ? whole.claim(line, maker)
                            : Optional.empty();
            claim.ifPresentOrElse(claimed::add, () -> left.add(line));
        }
    }

    List<OtherRow> claimed() {
        return claimed;
    }

    /** The rows that state no such thing. */
    List<Grid.Line> left() {
        return left;
    }
}
