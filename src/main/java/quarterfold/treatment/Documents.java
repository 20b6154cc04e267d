package quarterfold.treatment;

import java.util.HashMap;
import java.util.Map;
import quarterfold.ledger.Entry;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/**
 * Works out VAT on the value of a document to the nearest penny, where one document may be several
 * entries: each entry takes what the document's total has grown by, so that together they have the
 * VAT of the whole, rounded once.
 */
final class Documents {

    private final Map<Document, Amount> values = new HashMap<>();

    private record Document(String party, String document, Percent rate, int direction) {}

    /** The VAT of this entry as its part of its document's. */
    Amount vat(Entry entry, Amount value, Percent rate) {
        String number = entry.line().document();
        if (number.isEmpty()) {
            return rounded(value, rate);
        }
        Document document =
                new Document(entry.profile().party(), number, rate, entry.kind().direction());
        Amount before = values.getOrDefault(document, Amount.ZERO);
        Amount after = before.plus(value);
        values.put(document, after);
        return rounded(after, rate).minus(rounded(before, rate));
    }

    private static Amount rounded(Amount value, Percent rate) {
        return value.vatOnTop(rate, Rounding.NEAREST_PENNY);
    }
}
