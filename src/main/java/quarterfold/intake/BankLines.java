package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Item;
import quarterfold.ledger.Kind;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Profile;
import quarterfold.money.Amount;

/**
 * Makes the lines of a booked entry: one, or one for each of its transactions where all of them
 * state amounts in the entry's currency that add up to it.
 */
final class BankLines {
    private final String number;
    private final Particulars account;

    /** {@code account}: its number without spaces; empty where the statement names none. */
    BankLines(String account) {
        this.number = account;
        this.account =
                account.isEmpty()
                        ? Particulars.NONE
                        : new Particulars(Map.of(Particular.ACCOUNT, account));
    }

    /** The number of the account, without spaces; empty where the statement names none. */
    String account() {
        return number;
    }

    /** Gives the lines of the entry that is the file's {@code row}-th. */
    void give(BankEntry entry, long row, RowReader.Output output) {
        List<BankTransaction> parts = parts(entry);
        if (parts.isEmpty()) {
            XmlTexts only = entry.count() == 1 ? entry.transactions().get(0) : XmlTexts.NONE;
            parts = List.of(new BankTransaction(entry, entry.amount(), only, ""));
        }
        parts.forEach(part -> output.line(line(part, row)));
    }

    private static List<BankTransaction> parts(BankEntry entry) {
        List<XmlTexts> transactions = entry.transactions();
        if (transactions.size() < 2) {
            return List.of();
        }
        List<BankTransaction> parts = new ArrayList<>();
        Amount sum = Amount.ZERO;
        for (XmlTexts own : transactions) {
            Optional<Amount> amount = amount(entry, own);
            if (amount.isEmpty()) {
                return List.of();
            }
            sum = sum.plus(amount.get());
            String part = "%d of %d".formatted(parts.size() + 1, transactions.size());
            parts.add(new BankTransaction(entry, amount.get(), own, part));
        }
        return sum.equals(entry.amount()) ? parts : List.of();
    }

    /** What a transaction states of the entry's money; nothing where it does not say. */
    private static Optional<Amount> amount(BankEntry entry, XmlTexts own) {
        String path = own.first("Amt").isEmpty() ? "AmtDtls/TxAmt/Amt" : "Amt";
        String stated = own.first("CdtDbtInd");
        String indicator =
                stated.isEmpty() ? (entry.amount().signum() < 0 ? "DBIT" : "CRDT") : stated;
        return own.first(path + "@Ccy").equals(entry.currency())
                ? new BankCells(new Problems())
                        .signed(own, path, indicator, new BankCells.Place("", ""))
                : Optional.empty();
    }

    private Line line(BankTransaction part, long row) {
        BankEntry entry = part.entry();
        return new Line(
                row,
                entry.day().orElseThrow(),
                Profile.of(Kind.BANK_LINE, entry.currency(), part.party()),
                new Item("", part.words()),
                part.reference(),
                part.banksReference(),
                Amounts.ofGross(part.amount()),
                entry.valued(),
                account,
                "",
                part.notes());
    }
}
