package quarterfold.intake;

import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/** Reads the rows of a plain sheet: each makes one line. */
final class PlainRows implements RowReader {
    private final LineCells cells;
    private final MoneyCells money;
    private final LineMaker lines;
    private final ProfileReader profiles;
    private final String home;
    private final int net;
    private final int vat;
    private final int gross;

    /** {@code home}: the currency of the return. */
    PlainRows(
            LineCells cells,
            MoneyCells money,
            LineMaker lines,
            ProfileReader profiles,
            String home) {
        this.home = home;
        this.cells = cells;
        this.money = money;
        this.lines = lines;
        this.profiles = profiles;
        net = money.index(Field.NET.code());
        vat = money.index(Field.VAT.code());
        gross = money.index(Field.GROSS.code());
    }

    @Override
    public long read(Row row, Output output) {
        if (!row.isWhole()) {
            return 0;
        }
        boolean dated = lines.start(row);
        boolean counted = money.read(row);
        Optional<Profile> profile = profiles.read(row);
        if (counted) {
            profile.ifPresent(p -> checkAmounts(row, p));
        }
        if (!dated || !counted || profile.isEmpty() || row.isBad()) {
            return 0;
        }
        Line line = lines.line(row, cells, profile.get(), amounts(), original(row));
        if (profile.get().currency().equals(home)
                && line.particulars().word(Particular.STERLING_VAT).isPresent()) {
            row.fault(
                    Particular.STERLING_VAT.code(),
                    "found it on a row in %s; expected it where the amounts are in another currency; here enter the VAT as vat, such as 20.00"
                            .formatted(home));
            return 0;
        }
        output.line(line);
        long printed =
                money.isStated(gross) ? money.value(gross) : money.value(net) + money.value(vat);
        return printed * profile.get().kind().direction();
    }

    private void checkAmounts(Row row, Profile profile) {
        boolean hasNet = money.isStated(net);
        boolean hasVat = money.isStated(vat);
        boolean importVat =
                profile.kind() == Kind.IMPORT_VAT_PAID
                        || profile.kind() == Kind.IMPORT_VAT_POSTPONED;
        boolean enough =
                money.isStated(gross)
                        || (hasNet && (hasVat || profile.rate().isStated()))
                        || (hasVat && importVat)
                        || profile.kind() == Kind.FUEL_SCALE;
        if (!enough) {
            row.fault(
                    "gross",
                    "found %s; expected gross, or net with vat or rate, or vat alone for import VAT, such as 120.00; on a document without VAT enter vat 0"
                            .formatted(hasNet ? "net alone" : hasVat ? "vat alone" : "no amount"));
        } else if (money.isStated(gross) && hasNet && hasVat) {
            AmountsCheck.check(row, "gross", amounts());
        }
    }

    private Amounts amounts() {
        return new Amounts(stated(net), stated(vat), stated(gross));
    }

    private Optional<Amount> stated(int index) {
        return money.isStated(index) ? Optional.of(money.amount(index)) : Optional.empty();
    }

    private String original(Row row) {
        StringBuilder original = new StringBuilder();
        for (int index : new int[] {net, vat, gross}) {
            if (money.isConverted(index)) {
                original.append(original.length() == 0 ? "" : "; ")
                        .append(money.original(row, index));
            }
        }
        return original.toString();
    }
}
