package quarterfold.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import quarterfold.money.Amount;

/**
 * Reads amounts, days and indicators of a bank statement's elements; what is none becomes a
 * problem. Amounts are never negative in the file; {@code CdtDbtInd} says which way they go.
 */
final class BankCells {
    private static final Layout.Numbers NUMBERS =
            new Layout.Numbers('.', (char) 0, false, false, true, false, 0, List.of());

    private final Problems problems;
    private final AmountReader amounts = new AmountReader(NUMBERS);

    BankCells(Problems problems) {
        this.problems = problems;
    }

    /**
     * The amount at a path, positive where it comes to the account's owner.
     *
     * @param indicator {@code CRDT} or {@code DBIT}
     */
    Optional<Amount> signed(XmlTexts texts, String path, String indicator, Place place) {
        String text = texts.first(path);
        long value = amounts.read(text);
        if (value == AmountReader.BAD || value < 0) {
            wrong(
                    place.at(path),
                    text,
                    "an amount that is not negative, with at most 4 decimals, such as 18600.00");
            return Optional.empty();
        }
        if (!indicator.equals("CRDT") && !indicator.equals("DBIT")) {
            wrong(place.at("CdtDbtInd"), indicator, "CRDT or DBIT, such as CRDT");
            return Optional.empty();
        }
        return Optional.of(new Amount(indicator.equals("CRDT") ? value : -value));
    }

    /** The currency of the amount at a path. */
    Optional<String> currency(XmlTexts texts, String path, Place place) {
        String code = texts.first(path + "@Ccy");
        if (!Words.isCurrency(code)) {
            wrong(place.at(path + "@Ccy"), code, Field.CURRENCY.expected());
            return Optional.empty();
        }
        return Optional.of(code);
    }

    /** Whether the indicator at a path says yes; no where it is not there. */
    boolean isTrue(XmlTexts texts, String path, Place place) {
        String text = texts.first(path);
        boolean yes = text.equals("true") || text.equals("1");
        if (!yes && !text.isEmpty() && !text.equals("false") && !text.equals("0")) {
            wrong(place.at(path), text, "true or false, such as true");
        }
        return yes;
    }

    /**
     * The day at a path, in either form of the choice; nothing where it is not there. Of a time it
     * is the day the bank writes, whatever the zone: midnight of one zone is another's day before.
     */
    Optional<LocalDate> day(XmlTexts texts, String path, Place place) {
        String date = texts.first(path + "/Dt");
        String time = texts.first(path + "/DtTm");
        if (date.isEmpty() && time.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    date.isEmpty()
                            ? LocalDate.parse(time, DateTimeFormatter.ISO_DATE_TIME)
                            : LocalDate.parse(date, DateTimeFormatter.ISO_DATE));
        } catch (DateTimeException e) {
            wrong(place.at(path), date.isEmpty() ? time : date, "a date such as 2026-09-30");
            return Optional.empty();
        }
    }

    void wrong(Place place, String found, String expected) {
        problems.add(Problem.found(place.place(), place.path(), found, expected));
    }

    /**
     * Where an element is.
     *
     * @param place the line it begins on, such as {@code may.xml:57}
     * @param path of local names, such as {@code Ntry}
     */
    record Place(String place, String path) {
        Place at(String inner) {
            return new Place(place, path + "/" + inner);
        }
    }
}
