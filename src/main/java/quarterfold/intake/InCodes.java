package quarterfold.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;

/**
 * What reports write of a country or a VAT rate, as the codes that the ledger keeps: names, codes
 * of three letters (ISO 3166-1 alpha-3) and of other use, such as {@code UK}; rates in words. The
 * tables are {@code countries.csv} and {@code rates.csv} in {@code templates/words}. Of a rate that
 * was not yet in force on an entry's day, as the table says since when it is, the law's tables ask.
 */
final class InCodes {
    private static final Pattern PERCENT = Pattern.compile("(\\d{1,3}(?:[.,]\\d+)?)\\s*%");
    private static final Set<String> OF_RATES = Set.of("vat", "rate", "mwst", "tva", "iva", "btw");

    /** Read when a text that is no code is met first: most files have none. */
    private static final class Known {
        static final Map<Phrase, String> COUNTRIES = countries();
        static final Map<Phrase, String> RATES = words("rates.csv", "rate");
    }

    private InCodes() {}

    private static Map<Phrase, String> words(String file, String code) {
        Map<Phrase, String> words = new HashMap<>();
        for (CSVRecord row : Vocabulary.rows(file)) {
            words.put(Phrase.of(row.get("words")), row.get(code));
        }
        return words;
    }

    private static Map<Phrase, String> countries() {
        Map<Phrase, String> names = words("countries.csv", "code");
        for (String code : Locale.getISOCountries()) {
            names.put(Phrase.of(code), code);
            names.put(Phrase.of(new Locale("", code).getISO3Country()), code);
        }
        names.put(Phrase.of("XI"), "XI");
        return names;
    }

    /** The code of a text of the field; the text itself where it is none, or not understood. */
    static String of(Field field, String text) {
        return switch (field) {
            case PARTY_COUNTRY, FROM, TO ->
                    field.accepts(text)
                            ? text
                            : Known.COUNTRIES.getOrDefault(Phrase.of(text), text);
            case RATE -> field.accepts(text) ? text : rate(text);
            default -> text;
        };
    }

    /** Whether a text that is not empty is understood. */
    static boolean accepts(Field field, String text) {
        return field.accepts(of(field, text));
    }

    /** A percentage, words of one rate, or both where they agree. */
    private static String rate(String text) {
        Set<String> rates = new TreeSet<>();
        Matcher percent = PERCENT.matcher(text);
        while (percent.find()) {
            rates.add(percent.group(1).replace(',', '.').replaceFirst("\\.0+$", ""));
        }
        List<String> words = Phrase.of(percent.replaceAll(" ")).words();
        Phrase whole = new Phrase(words);
        Phrase rest =
                new Phrase(
                        words.stream()
                                .filter(word -> !OF_RATES.contains(word))
                                .collect(Collectors.toList()));
        if (!rest.isEmpty()) {
            rates.add(
                    Known.RATES.getOrDefault(Known.RATES.containsKey(whole) ? whole : rest, text));
        }
        return rates.size() == 1 ? rates.iterator().next() : text;
    }
}
