package quarterfold.intake;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.ledger.Settings;

/**
 * Which side of an invoice the book's business is on. A party is the business if it states the
 * business's VAT number; one that states none, if it has the business's name.
 */
enum InvoiceSide {
    SELLER,
    BUYER,
    /** Both parties are the business, which is no supply. */
    BOTH,
    /** Neither party is the business. */
    NEITHER;

    private static final Pattern UNITED_KINGDOM = Pattern.compile("(GB|XI)?([0-9]{9})([0-9]{3})?");

    static InvoiceSide of(Invoice invoice, Settings book) {
        boolean seller = isBusiness(invoice.seller(), book);
        boolean buyer = isBusiness(invoice.buyer(), book);
        if (seller) {
            return buyer ? BOTH : SELLER;
        }
        return buyer ? BUYER : NEITHER;
    }

    private static boolean isBusiness(Invoice.Party party, Settings book) {
        String theirs = number(party.vat());
        String ours = number(book.vatNumber());
        if (!theirs.isEmpty() && !ours.isEmpty()) {
            return theirs.equals(ours);
        }
        String name = name(party.name());
        return !name.isEmpty() && name.equals(name(book.name()));
    }

    /** Of a United Kingdom number the nine digits, which branch and prefix leave as they are. */
    private static String number(String written) {
        String plain = written.replaceAll("[\\s.\\-]", "").toUpperCase(Locale.ROOT);
        Matcher digits = UNITED_KINGDOM.matcher(plain);
        return digits.matches() ? digits.group(2) : plain;
    }

    /** Letters and digits alone, so that marks, case and a company's form do not tell apart. */
    private static String name(String written) {
        return Normalizer.normalize(written, Normalizer.Form.NFKD)
                .toLowerCase(Locale.ROOT)
                .replace("&", " and ")
                .replaceAll("\\blimited\\b", "ltd")
                .replaceAll("[^\\p{L}\\p{N}]", "");
    }
}
