package quarterfold.period;

import java.util.List;
import java.util.Map;
import quarterfold.law.AccountLine;
import quarterfold.law.AccountLine.Portion;
import quarterfold.money.Amount;

/**
 * The VAT account of one period: the VAT payable portion and the VAT allowable portion, line by
 * line (VAT Regulations 1995 reg 32). Each portion adds up to the boxes of the return it feeds (reg
 * 39(2) and (3)), exactly, before their rounding. Sterling, to four decimals.
 *
 * @param vatReturn the return whose boxes it feeds
 */
public record VatAccount(VatReturn vatReturn, Half payable, Half allowable) {

    /**
     * A portion of the account.
     *
     * @param boxes the boxes of the return it feeds, by id
     */
    public record Half(Portion portion, List<String> boxes, List<Line> lines) {

        public Half {
            boxes = List.copyOf(boxes);
            lines = List.copyOf(lines);
        }

        public Amount total() {
            return lines.stream().map(Line::amount).reduce(Amount.ZERO, Amount::plus);
        }
    }

    /**
     * A line of a portion.
     *
     * @param source the text the line rests on
     * @param entries how many occasions of entries are on it
     * @param adjustments how many adjustments beside entries are on it
     * @param boxes what of it is in each box, by id
     */
    public record Line(
            AccountLine line,
            String source,
            long entries,
            long adjustments,
            Map<String, Amount> boxes) {

        public Amount amount() {
            return boxes.values().stream().reduce(Amount.ZERO, Amount::plus);
        }
    }

    /** The account of a draft or of a closed period. */
    public static VatAccount of(Pack pack) {
        VatAccountMaker maker = new VatAccountMaker(pack);
        pack.forEachTreated(maker::add);
        return maker.account();
    }
}
