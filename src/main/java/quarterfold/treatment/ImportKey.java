package quarterfold.treatment;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Evidence;
import quarterfold.ledger.Kind;
import quarterfold.money.Amount;

/**
 * One import of a certificate or statement: entry reference, date and VAT. Whichever list, file or
 * form of the document it stands on, it is the same import (the three as the key are from memory).
 *
 * @param reference without spaces and signs, so that two prints of it are one
 */
record ImportKey(String reference, LocalDate day, Amount vat) {

    static ImportKey of(Entry entry) {
        return new ImportKey(
                reference(entry.line().document()), entry.taxPoint(), ImportKey.vat(entry));
    }

    /** The VAT alone: one list may state the value of the goods, another not. */
    static Amount vat(Entry entry) {
        return entry.amounts().vat().orElseGet(() -> entry.amounts().money());
    }

    /** The value of the goods, where the line states it. */
    static Optional<Amount> value(Entry entry) {
        Amounts amounts = entry.amounts();
        return amounts.net()
                .or(() -> amounts.vat().flatMap(v -> amounts.gross().map(g -> g.minus(v))));
    }

    /** An entry reference without what its prints differ in. */
    static String reference(String document) {
        StringBuilder plain = new StringBuilder();
        document.toUpperCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /** Whether it is a line of an import VAT certificate or a postponed import VAT statement. */
    static boolean isOfDocument(Entry entry) {
        Evidence evidence = entry.profile().evidence();
        return entry.kind() == Kind.IMPORT_VAT_PAID
                ? evidence == Evidence.IMPORT_CERTIFICATE
                : entry.kind() == Kind.IMPORT_VAT_POSTPONED
                        && evidence == Evidence.POSTPONED_STATEMENT;
    }

    /**
     * The importer's nine digits, since what follows marks a part of the business; empty where no
     * importer is stated.
     */
    static String importer(Entry entry) {
        String digits = digits(entry);
        return digits.substring(0, Math.min(9, digits.length()));
    }

    private static String digits(Entry entry) {
        return entry.profile().partyVat().replaceAll("[^0-9]", "");
    }

    /** Whether two entries can be of one importer. */
    static boolean isOneImporter(Entry one, Entry other) {
        String first = importer(one);
        String second = importer(other);
        return first.isEmpty() || second.isEmpty() || first.equals(second);
    }

    /**
     * Whether two entries can be of one part of the business, which has documents of its own; a
     * number without the digits that mark it is of any.
     */
    static boolean isOnePart(Entry one, Entry other) {
        String first = digits(one);
        String second = digits(other);
        boolean whole = first.length() > 9 && second.length() > 9;
        return isOneImporter(one, other) && (!whole || first.equals(second));
    }
}
