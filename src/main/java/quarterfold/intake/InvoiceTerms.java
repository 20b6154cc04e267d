package quarterfold.intake;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * Reads the terms of an invoice off its elements. What is missing or not of its type becomes a
 * problem with file, line and path, and a stand-in is given, so that all problems are found at
 * once.
 */
final class InvoiceTerms {

    /** How a syntax writes a day. */
    interface Days {
        /** The day, or nothing where the element writes none. */
        Optional<LocalDate> parse(XmlNode node);

        String example();
    }

    private static final Pattern DECIMAL =
            Pattern.compile("[+-]?(\\d{1,18}(\\.\\d{0,18})?|\\.\\d{1,18})");
    private static final int LONGEST = 200;
    private static final LocalDate NO_DAY = LocalDate.EPOCH;

    private final String place;
    private final Days days;
    private final Problems problems;
    private String currency = "";

    InvoiceTerms(String place, Days days, Problems problems) {
        this.place = place;
        this.days = days;
        this.problems = problems;
    }

    /** A text that must be there. */
    String text(XmlNode in, String path, InvoiceTerm term) {
        String text = in.text(path);
        if (text.isEmpty()) {
            missing(in, path, term.expected());
        } else if (text.length() > LONGEST) {
            wrong(in, path, "%s, of at most %d characters".formatted(term.expected(), LONGEST));
        }
        return text;
    }

    InvoiceType type(XmlNode in, String path) {
        String code = text(in, path, InvoiceTerm.TYPE);
        Optional<InvoiceType> type = InvoiceType.of(code);
        if (!code.isEmpty() && type.isEmpty()) {
            wrong(in, path, InvoiceTerm.TYPE.expected());
        } else if (type.filter(InvoiceType::isProForma).isPresent()) {
            wrong(
                    in,
                    path,
                    "an invoice or a credit note, such as 380 or 381: a pro forma invoice is no VAT invoice");
        }
        return type.orElse(new InvoiceType(code, false));
    }

    /** The currency of the document, that of every amount read after. */
    String currency(XmlNode in, String path) {
        currency = text(in, path, InvoiceTerm.CURRENCY);
        if (!currency.isEmpty() && !Words.isCurrency(currency)) {
            wrong(in, path, InvoiceTerm.CURRENCY.expected());
        }
        return currency;
    }

    /** A country; empty where there is none, which is a problem only where it is needed. */
    String country(XmlNode in, String path, InvoiceTerm term, boolean needed) {
        String country = needed ? text(in, path, term) : in.text(path);
        if (!country.isEmpty() && !Words.isCountry(country)) {
            wrong(in, path, term.expected());
        }
        return country;
    }

    LocalDate day(XmlNode in, String path, InvoiceTerm term) {
        if (in.text(path).isEmpty()) {
            missing(in, path, term.expected(days.example()));
        }
        return dayIfAny(in, path, term).orElse(NO_DAY);
    }

    Optional<LocalDate> dayIfAny(XmlNode in, String path, InvoiceTerm term) {
        Optional<XmlNode> node = in.first(path).filter(n -> !n.text().isEmpty());
        Optional<LocalDate> day = node.flatMap(this::parse);
        if (node.isPresent() && day.isEmpty()) {
            wrong(in, path, term.expected(days.example()));
        }
        return day;
    }

    private Optional<LocalDate> parse(XmlNode node) {
        try {
            return days.parse(node);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    Amount amount(XmlNode in, String path, InvoiceTerm term) {
        if (in.text(path).isEmpty()) {
            missing(in, path, term.expected());
        }
        return amountIfAny(in, path, term).orElse(Amount.ZERO);
    }

    Optional<Amount> amountIfAny(XmlNode in, String path, InvoiceTerm term) {
        return in.first(path).filter(n -> !n.text().isEmpty()).map(n -> written(n, currency, term));
    }

    /** The amount an element writes, which must be in the currency where it states one. */
    Amount written(XmlNode node, String in, InvoiceTerm term) {
        String stated = node.attribute("currencyID");
        if (!stated.isEmpty() && !stated.equals(in)) {
            problem(
                    node.line(),
                    node.path() + "/@currencyID",
                    "found %s; expected the currency of the document, such as %s"
                            .formatted(Problem.quoted(stated), in));
        }
        try {
            return Amount.of(decimal(node.text()));
        } catch (NumberFormatException | ArithmeticException e) {
            problem(
                    node.line(),
                    node.path(),
                    "found %s; expected %s, with a decimal point and at most 4 decimals"
                            .formatted(Problem.quoted(node.text()), term.expected()));
            return Amount.ZERO;
        }
    }

    /** As {@code xsd:decimal} has it: no exponent, no grouping. */
    private static BigDecimal decimal(String text) {
        if (!DECIMAL.matcher(text).matches()) {
            throw new NumberFormatException(text);
        }
        return new BigDecimal(text);
    }

    /**
     * The category and rate of a line of the breakdown, an item, an allowance or a charge.
     *
     * @param needed whether a rate must be stated, where the category has one
     */
    Invoice.Tax tax(XmlNode in, String category, String rate, boolean needed) {
        String code = text(in, category, InvoiceTerm.CATEGORY);
        Optional<VatCategory> known = VatCategory.of(code);
        if (!code.isEmpty() && known.isEmpty()) {
            wrong(in, category, InvoiceTerm.CATEGORY.expected());
        }
        VatCategory found = known.orElse(VatCategory.OUTSIDE);
        String percent = in.text(rate);
        if (percent.isEmpty()) {
            if (needed && found != VatCategory.OUTSIDE) {
                missing(in, rate, InvoiceTerm.RATE.expected());
            }
            return new Invoice.Tax(found, Optional.empty());
        }
        try {
            Percent value = new Percent(decimal(percent));
            if (value.compareTo(Percent.HUNDRED) <= 0 && value.value().scale() <= 4) {
                return new Invoice.Tax(found, Optional.of(value));
            }
        } catch (IllegalArgumentException e) {
            // told below
        }
        wrong(in, rate, InvoiceTerm.RATE.expected());
        return new Invoice.Tax(found, Optional.empty());
    }

    /** Whether an indicator says yes: {@code true} or {@code 1}. */
    static boolean isTrue(String text) {
        return text.equals("1") || text.toLowerCase(Locale.ROOT).equals("true");
    }

    /** A problem with what is not there, told of the last element on the way to it that is. */
    void missing(XmlNode in, String path, String expected) {
        XmlNode last = in;
        for (int end = path.length(); end > 0 && last == in; end = path.lastIndexOf('/', end - 1)) {
            last = in.first(path.substring(0, end)).orElse(in);
        }
        problem(last.line(), below(in, path), "found none; expected " + expected);
    }

    /** A problem with the first element a path leads to. */
    void wrong(XmlNode in, String path, String expected) {
        XmlNode node = in.first(path).orElse(in);
        String format = node.attribute("format");
        problem(
                node.line(),
                below(in, path),
                "found %s%s; expected %s"
                        .formatted(
                                Problem.quoted(node.text()),
                                format.isEmpty() ? "" : " of format " + Problem.quoted(format),
                                expected));
    }

    private static String below(XmlNode in, String path) {
        return in.path().isEmpty() ? path : in.path() + "/" + path;
    }

    void problem(int line, String path, String fault) {
        problems.add(new Problem(place + ":" + line, path, fault));
    }
}
