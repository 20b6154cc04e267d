package quarterfold.intake;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.money.Amount;

/**
 * The tax a report prints beside its prices, with the owner's + and -. Tax that the channel
 * withholds whole is the channel's to account for, and the price without it is the seller's; tax
 * that is not withheld is the seller's own VAT; no tax means that the price includes VAT (common
 * practice of settlement reports). Anything else is unclear, and a question for the treatment.
 */
final class TaxCells {
    private final int tax;
    private final int withheld;
    private final LineCells restCells;
    private final ProfileReader restProfiles;

    /** A layout without tax columns has no tax in any row. */
    TaxCells(Layout layout, FieldCells rowCells, String currency, MoneyCells money) {
        tax = layout.tax().map(t -> money.index(t.column())).orElse(-1);
        withheld = layout.tax().flatMap(Layout.Tax::withheld).map(money::index).orElse(-1);
        FieldCells own =
                rowCells.with(EntryCells.collects(ChannelCollects.UNCLEAR))
                        .with(Map.of(Field.KIND, Kind.OTHER_MONEY.code()));
        restCells = LineCells.of(own);
        restProfiles = new ProfileReader(own, currency);
    }

    boolean uses(int index) {
        return index >= 0 && (index == tax || index == withheld);
    }

    ChannelCollects collects(MoneyCells money) {
        long kept = money.value(withheld);
        long shown = money.value(tax);
        if (kept == 0) {
            return ChannelCollects.NO;
        }
        return shown + kept == 0 ? ChannelCollects.YES : ChannelCollects.UNCLEAR;
    }

    /** Whether the row shows tax that is the seller's own VAT. */
    boolean isOwn(MoneyCells money) {
        return money.value(tax) != 0 && money.value(withheld) == 0;
    }

    /**
     * Shares the row's own VAT over its sales in proportion to price, to four decimals; the last
     * takes the rest.
     *
     * @return the share of each entry, 0 for one that is no sale; or nothing, with a problem, where
     *     the row has no price to share it over
     */
    Optional<long[]> shares(Row row, MoneyCells money, List<EntryCells> entries) {
        long whole = 0;
        int last = -1;
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).isSale()) {
                whole += entries.get(i).price(money);
                last = i;
            }
        }
        if (whole == 0) {
            row.wrong(
                    money.column(tax),
                    "no tax on a row whose sales add up to nothing, such as 0.00");
            return Optional.empty();
        }
        long[] shares = new long[entries.size()];
        long rest = money.value(tax);
        for (int i = 0; i < last; i++) {
            if (entries.get(i).isSale()) {
                shares[i] =
                        money.amount(tax)
                                .shared(new Amount(entries.get(i).price(money)), new Amount(whole))
                                .tenThousandths();
                rest -= shares[i];
            }
        }
        shares[last] = rest;
        return Optional.of(shares);
    }

    /** A price with its share of the tax, as printed. */
    Amounts taxed(EntryCells entry, MoneyCells money, long share) {
        int sign = entry.ownersSign();
        Amount net = new Amount(entry.price(money) * sign);
        Amount vat = new Amount(share * sign);
        return new Amounts(Optional.of(net), Optional.of(vat), Optional.of(net.plus(vat)));
    }

    /** The tax cells as the file writes them. */
    String original(Row row, MoneyCells money) {
        return money.original(row, tax)
                + (money.isStated(withheld) ? "; " + money.original(row, withheld) : "");
    }

    /**
     * Tax and withheld tax that do not cancel leave money with the seller, which is entered too.
     */
    Optional<Line> rest(Row row, MoneyCells money, LineMaker lines) {
        long rest = money.value(tax) + money.value(withheld);
        return restProfiles
                .read(row)
                .map(
                        profile ->
                                lines.line(
                                        row,
                                        restCells,
                                        profile,
                                        Amounts.ofGross(new Amount(rest)),
                                        original(row, money)));
    }
}
