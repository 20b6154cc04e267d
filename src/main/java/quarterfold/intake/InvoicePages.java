package quarterfold.intake;

import java.text.Normalizer;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import quarterfold.money.Amount;

/**
 * The printed pages of the PDF an invoice is packed in: what a person reads, where the figures are
 * read from the file inside. Supplier and customer answer for it that the content of an invoice is
 * not altered: VAT Regulations 1995 reg 13(7) and (8). So the number and the total must be on the
 * pages too.
 */
final class InvoicePages {

    /** Of an invoice that is a file by itself. */
    static final InvoicePages NONE = new InvoicePages(Optional.empty(), Optional.empty());

    private static final int MOST_BETWEEN = 3;

    private final Optional<String> file;
    private final Optional<String> text;

    private InvoicePages(Optional<String> file, Optional<String> text) {
        this.file = file;
        this.text = text;
    }

    /**
     * The pages of a PDF. Those without a text layer, or that cannot be read whole, are not
     * compared: the text may be on what is a picture.
     *
     * @param file the invoice's own name in the PDF
     */
    static InvoicePages of(PdfFile pdf, String file) {
        try {
            String text =
                    PdfLines.of(pdf).stream()
                            .map(PrintedLine::text)
                            .collect(Collectors.joining("\n"));
            return new InvoicePages(
                    Optional.of(file),
                    Optional.of(Normalizer.normalize(text, Normalizer.Form.NFKC)));
        } catch (BadFile unreadable) {
            return new InvoicePages(Optional.of(file), Optional.empty());
        }
    }

    /** What is to be noted of pages that cannot be compared. */
    List<String> notes() {
        return file.isPresent() && text.isEmpty()
                ? List.of("pages: not compared, as they are not all text that can be read")
                : List.of();
    }

    /** The invoice's own name in the PDF. */
    String file() {
        return file.orElse("");
    }

    /** Whether they print the total with VAT or the amount due, as far as can be told. */
    boolean showTotal(Invoice invoice) {
        Amount gross = invoice.totals().gross();
        Amount due = invoice.totals().due();
        return gross.isZero()
                || show(new PrintedAmount(gross, invoice.currency()))
                || (!due.isZero() && show(new PrintedAmount(due, invoice.currency())));
    }

    private boolean show(PrintedAmount amount) {
        return text.isEmpty() || amount.isIn(text.get()) || amount.isIn(closed(text.get()));
    }

    /** Whether they print its number, as far as can be told. */
    boolean showNumber(Invoice invoice) {
        String marks = "[^\\p{L}\\p{N}]{0,%d}".formatted(MOST_BETWEEN);
        String number = Normalizer.normalize(invoice.number(), Normalizer.Form.NFKC);
        String letters =
                number.codePoints()
                        .filter(Character::isLetterOrDigit)
                        .mapToObj(c -> Pattern.quote(Character.toString(c)))
                        .collect(Collectors.joining(marks));
        if (text.isEmpty() || letters.isEmpty()) {
            return true;
        }
        Pattern whole =
                Pattern.compile(
                        "(?<!\\p{N})" + letters + "(?!\\p{N})",
                        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
        return whole.matcher(text.get()).find();
    }

    /** What they lack, in words; empty where they show the number and the total. */
    String lacking(Invoice invoice) {
        String number = "the number (BT-1), %s".formatted(invoice.number());
        String total = "the total with VAT (BT-112), %s".formatted(invoice.totals().gross());
        Amount due = invoice.totals().due();
        if (!due.isZero() && !due.equals(invoice.totals().gross())) {
            total += ", or the amount due (BT-115), %s".formatted(due);
        }
        String printed =
                largest()
                        .map("; the largest amount on them is %s"::formatted)
                        .orElse("; they print no amount with two decimals");
        if (showTotal(invoice)) {
            return showNumber(invoice) ? "" : "do not show " + number;
        }
        return (showNumber(invoice)
                        ? "do not show " + total
                        : "show neither %s, nor %s".formatted(number, total))
                + printed;
    }

    private Optional<String> largest() {
        return text.flatMap(PrintedAmount::largest);
    }

    /** Without the spaces in a line, which letters set apart have between them. */
    private static String closed(String text) {
        return text.replace(" ", "");
    }
}
