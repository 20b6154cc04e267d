package quarterfold.intake;

import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.ChannelCollects;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/** One entry that rows of a rule make, made ready for one header. */
final class EntryCells {
    private final Kind kind;
    private final int gross;
    private final int net;
    private final int vat;
    private final LineCells cells;
    private final ProfileReader profiles;
    private final ProfileReader collected;
    private final ProfileReader unclear;

    EntryCells(Layout.Enter enter, FieldCells rowCells, String currency, MoneyCells money) {
        kind = enter.kind();
        gross = index(enter, Field.GROSS, money);
        net = index(enter, Field.NET, money);
        vat = index(enter, Field.VAT, money);
        FieldCells own = rowCells.with(enter.set()).with(Map.of(Field.KIND, kind.code()));
        cells = LineCells.of(own);
        profiles = new ProfileReader(own, currency);
        collected = new ProfileReader(own.with(collects(ChannelCollects.YES)), currency);
        unclear = new ProfileReader(own.with(collects(ChannelCollects.UNCLEAR)), currency);
    }

    static Map<Field, String> collects(ChannelCollects collects) {
        return Map.of(Field.CHANNEL_COLLECTS, collects.code());
    }

    private static int index(Layout.Enter enter, Field field, MoneyCells money) {
        String column = enter.amounts().get(field);
        return column == null ? -1 : money.index(column);
    }

    Kind kind() {
        return kind;
    }

    LineCells cells() {
        return cells;
    }

    /** Whether tax beside the price is tax on this entry. */
    boolean isSale() {
        return kind.side() == Kind.Side.SALES;
    }

    boolean uses(int index) {
        return index == gross || index == net || index == vat;
    }

    /** Whether the row states an amount other than zero for it. */
    boolean isThere(MoneyCells money) {
        return money.value(gross) != 0 || money.value(net) != 0 || money.value(vat) != 0;
    }

    Optional<Profile> profile(Row row, ChannelCollects collects) {
        return switch (isSale() ? collects : ChannelCollects.NO) {
            case YES -> collected.read(row);
            case UNCLEAR -> unclear.read(row);
            case NO -> profiles.read(row);
        };
    }

    /** What turns an owner's + and - into an amount as printed, and back. */
    int ownersSign() {
        return kind.direction() < 0 ? -1 : 1;
    }

    /** The amounts as printed; {@code signs} says what a + of the cells means. */
    Amounts amounts(MoneyCells money, Layout.Signs signs) {
        int sign =
                signs == Layout.Signs.DOCUMENT ? 1 : signs.owners(kind.direction()) * ownersSign();
        if (net < 0 && vat < 0) {
            return Amounts.ofGross(new Amount(money.value(gross) * sign));
        }
        return new Amounts(
                amount(net, money, sign), amount(vat, money, sign), amount(gross, money, sign));
    }

    private static Optional<Amount> amount(int index, MoneyCells money, int sign) {
        return money.isStated(index)
                ? Optional.of(new Amount(money.value(index) * sign))
                : Optional.empty();
    }

    /** The price in a row that has its tax beside it. */
    long price(MoneyCells money) {
        return money.value(gross);
    }

    String grossName(MoneyCells money) {
        return gross < 0 ? "" : money.name(gross);
    }

    /** The amounts as the file writes them, where reading them meant converting; or empty. */
    String original(Row row, MoneyCells money) {
        String original = "";
        for (int index = 0; index < 3; index++) {
            int at = index == 0 ? net : index == 1 ? vat : gross;
            if (money.isConverted(at)) {
                original += (original.isEmpty() ? "" : "; ") + money.original(row, at);
            }
        }
        return original;
    }
}
