package quarterfold.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * An entry of a bank statement ({@code Ntry}), as the file states it.
 *
 * @param amount positive where it comes to the account; {@code CdtDbtInd} says so of a reversal
 *     too: ISO 20022 has of {@code RvslInd}, "If the CreditDebitIndicator is CRDT and
 *     ReversalIndicator is Yes, the original operation was a debit entry"
 * @param status {@code BOOK} where it is in the books
 * @param texts all but its transactions
 * @param transactions the {@code TxDtls} in it; none where there are more than can be told apart
 * @param count how many transactions there are
 */
record BankEntry(
        Amount amount,
        String currency,
        boolean isReversal,
        String status,
        Optional<LocalDate> booked,
        Optional<LocalDate> valued,
        XmlTexts texts,
        List<XmlTexts> transactions,
        int count) {
    private static final String BOOKED = "BOOK";

    /** An entry of more transactions than this is one line, so that memory stays flat. */
    static final int MOST_TRANSACTIONS = 10_000;

    boolean isBooked() {
        return status.equals(BOOKED);
    }

    /** The day it stands in the books; where that is not stated, the day its money counts from. */
    Optional<LocalDate> day() {
        return booked.or(this::valued);
    }

    /** Reads the entry the file stands at; nothing where it is not sound, as problems say. */
    static Optional<BankEntry> read(XmlPull xml, BankCells cells) throws BadFile {
        BankCells.Place place = new BankCells.Place(xml.place(), xml.name());
        XmlTexts texts = new XmlTexts();
        List<XmlTexts> transactions = new ArrayList<>();
        int count = 0;
        int entry = xml.depth();
        while (xml.child(entry)) {
            if (!xml.name().equals("NtryDtls")) {
                texts.add(xml);
                continue;
            }
            int details = xml.depth();
            while (xml.child(details)) {
                if (!xml.name().equals("TxDtls")) {
                    texts.add(xml);
                    continue;
                }
                count++;
                if (count > MOST_TRANSACTIONS) {
                    transactions.clear();
                } else {
                    transactions.add(XmlTexts.within(xml));
                }
            }
        }
        return of(texts, transactions, count, cells, place);
    }

    private static Optional<BankEntry> of(
            XmlTexts texts,
            List<XmlTexts> transactions,
            int count,
            BankCells cells,
            BankCells.Place place) {
        Optional<Amount> amount = cells.signed(texts, "Amt", texts.first("CdtDbtInd"), place);
        Optional<String> currency = cells.currency(texts, "Amt", place);
        String status = texts.first("Sts", "Sts/Cd", "Sts/Prtry");
        if (status.isEmpty()) {
            cells.wrong(place.at("Sts"), status, "the status of the entry, such as BOOK");
        }
        Optional<LocalDate> booked = cells.day(texts, "BookgDt", place);
        Optional<LocalDate> valued = cells.day(texts, "ValDt", place);
        boolean undated = booked.isEmpty() && valued.isEmpty() && status.equals(BOOKED);
        if (undated && !states(texts, "BookgDt") && !states(texts, "ValDt")) {
            cells.wrong(
                    place.at("BookgDt"), "", "the day the entry was booked, such as 2026-09-30");
        }
        if (amount.isEmpty() || currency.isEmpty() || status.isEmpty() || undated) {
            return Optional.empty();
        }
        return Optional.of(
                new BankEntry(
                        amount.get(),
                        currency.get(),
                        cells.isTrue(texts, "RvslInd", place),
                        status,
                        booked,
                        valued,
                        texts,
                        List.copyOf(transactions),
                        count));
    }

    private static boolean states(XmlTexts texts, String path) {
        return !texts.first(path + "/Dt", path + "/DtTm").isEmpty();
    }
}
