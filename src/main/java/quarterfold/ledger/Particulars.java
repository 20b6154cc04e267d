package quarterfold.ledger;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import quarterfold.money.Amount;
import quarterfold.money.Percent;

/**
 * The {@link Particular}s a line states; mostly none.
 *
 * <p>As one text they are {@code held=2026-04-08 use=both}, in the order of the constants: what the
 * ledger stores, so no text of one holds a space.
 */
public record Particulars(Map<Particular, String> stated) {

    public static final Particulars NONE = new Particulars(Map.of());

    private static final List<String> USES = List.of("taxable", "exempt", "both");
    private static final List<String> ADDRESSEES = List.of("business", "employee", "other");
    private static final List<String> ERRORS = List.of("deliberate", "separate");
    private static final Pattern DOCUMENTS =
            Pattern.compile("(?=.{1,400}$)[^\\s\\p{Cntrl},]+(,[^\\s\\p{Cntrl},]+)*");
    private static final Pattern ACCOUNT = Pattern.compile("[^\\s\\p{Cntrl}]{1,70}");

    /** Refuses a text that is not of its particular's type. */
    public Particulars {
        Map<Particular, String> ordered = new EnumMap<>(Particular.class);
        ordered.putAll(stated);
        stated = Collections.unmodifiableMap(ordered);
        stated.forEach(
                (particular, text) -> {
                    if (!isOf(particular, text)) {
                        throw new IllegalArgumentException(
                                "%s: found '%s'; expected %s"
                                        .formatted(
                                                particular.code(),
                                                text,
                                                particular.type().expected()));
                    }
                });
    }

    /** Whether a text may stand for a particular. */
    public static boolean isOf(Particular particular, String text) {
        try {
            return switch (particular.type()) {
                case DAY -> LocalDate.parse(text) != null;
                case MONTH -> YearMonth.parse(text) != null;
                case AMOUNT -> Amount.of(text) != null;
                case SHARE -> Percent.of(text).compareTo(Percent.HUNDRED) <= 0;
                case NUMBER -> Integer.parseInt(text) >= 0;
                case YES_NO -> text.equals("yes") || text.equals("no");
                case USE -> USES.contains(text);
                case ADDRESSED -> ADDRESSEES.contains(text);
                case ERROR -> ERRORS.contains(text);
                case DOCUMENTS -> DOCUMENTS.matcher(text).matches();
                case ACCOUNT -> ACCOUNT.matcher(text).matches();
            };
        } catch (DateTimeException | IllegalArgumentException | ArithmeticException e) {
            return false;
        }
    }

    /** The particulars of a text as {@link #text} writes it. */
    static Particulars parse(String text) {
        if (text.isEmpty()) {
            return NONE;
        }
        Map<Particular, String> stated = new EnumMap<>(Particular.class);
        for (String pair : text.split(" ", -1)) {
            int at = pair.indexOf('=');
            String code = at < 0 ? pair : pair.substring(0, at);
            Particular particular =
                    Coded.find(Particular.class, code)
                            .orElseThrow(
                                    () ->
                                            new IllegalStateException(
                                                    "the ledger holds the particular '%s', which this program does not know"
                                                            .formatted(code)));
            stated.put(particular, pair.substring(at + 1));
        }
        return new Particulars(stated);
    }

    String text() {
        if (stated.isEmpty()) { // as of nearly every line
            return "";
        }
        return stated.entrySet().stream()
                .map(p -> p.getKey().code() + "=" + p.getValue())
                .collect(Collectors.joining(" "));
    }

    public boolean isEmpty() {
        return stated.isEmpty();
    }

    /** Whether a particular of yes or no is stated as yes. */
    public boolean isYes(Particular particular) {
        return "yes".equals(stated.get(particular));
    }

    /** A particular as written, where it is stated. */
    public Optional<String> word(Particular particular) {
        return Optional.ofNullable(stated.get(particular));
    }

    /** A particular that is a day. */
    public Optional<LocalDate> day(Particular particular) {
        return word(particular).map(LocalDate::parse);
    }

    /** A particular that is a month. */
    public Optional<YearMonth> month(Particular particular) {
        return word(particular).map(YearMonth::parse);
    }

    /** A particular that is an amount. */
    public Optional<Amount> amount(Particular particular) {
        return word(particular).map(Amount::of);
    }

    /** A particular that is a share. */
    public Optional<Percent> share(Particular particular) {
        return word(particular).map(Percent::of);
    }

    /** The same where the line's amounts turn their signs: what stands in for one turns too. */
    Particulars turned() {
        return amount(Particular.STERLING_VAT)
                .map(vat -> with(Particular.STERLING_VAT, vat.negated().toString()))
                .orElse(this);
    }

    /** The same with one particular set. */
    public Particulars with(Particular particular, String text) {
        Map<Particular, String> with = new EnumMap<>(Particular.class);
        with.putAll(stated);
        with.put(particular, text);
        return new Particulars(with);
    }
}
