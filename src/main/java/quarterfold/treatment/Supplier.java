package quarterfold.treatment;

import java.util.Locale;
import quarterfold.ledger.Entry;

/**
 * Who issued a document, as far as an entry says: by VAT number or by name, without regard to
 * spaces, signs and the size of letters.
 */
record Supplier(String name, String vatNumber) {

    static Supplier of(Entry entry) {
        String party = entry.profile().party();
        return new Supplier(
                plain(party.isEmpty() ? entry.profile().channel() : party),
                plain(entry.profile().partyVat()));
    }

    private static String plain(String text) {
        StringBuilder plain = new StringBuilder();
        text.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /** Whether two may be one: the same name or number, or neither says anything. */
    boolean isSame(Supplier other) {
        boolean sameNumber = !vatNumber.isEmpty() && vatNumber.equals(other.vatNumber);
        return sameNumber || name.equals(other.name);
    }
}
