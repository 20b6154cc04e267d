package quarterfold.treatment;

import quarterfold.ledger.Entry;

/**
 * Who issued a document, as far as an entry says: by VAT number or by name, without regard to
 * spaces, signs and the size of letters.
 */
record Supplier(String name, String vatNumber) {

    static Supplier of(Entry entry) {
        String party = entry.profile().party();
        return new Supplier(
                Plain.name(party.isEmpty() ? entry.profile().channel() : party),
                Plain.name(entry.profile().partyVat()));
    }

    /** Whether two may be one: the same name or number, or neither says anything. */
    boolean isSame(Supplier other) {
        return hasNumberOf(other) || name.equals(other.name);
    }

    /** Whether two are one by what they say. */
    boolean isKnownAs(Supplier other) {
        return hasNumberOf(other) || (!name.isEmpty() && name.equals(other.name));
    }

    private boolean hasNumberOf(Supplier other) {
        return !vatNumber.isEmpty() && vatNumber.equals(other.vatNumber);
    }
}
