package quarterfold.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * The words that reports use for columns, kinds of rows and labels, in several languages: the
 * tables in {@code templates/words}.
 */
final class Vocabulary {
    private static final String FOLDER = "/quarterfold/templates/words/";

    /** What a word means for a row: an event, a part of one, a category; empty where nothing. */
    record Meaning(Phrase phrase, String event, String part, String category) {}

    private record Named(Phrase phrase, String meaning) {}

    private final List<Named> columns = new ArrayList<>();
    private final List<Meaning> kinds = new ArrayList<>();
    private final List<Named> labels = new ArrayList<>();
    private final Map<String, String> currencies = new LinkedHashMap<>();

    private Vocabulary() {}

    /** Reads the tables that ship. */
    static Vocabulary load() {
        Vocabulary words = new Vocabulary();
        for (CSVRecord row : rows("columns.csv")) {
            words.columns.add(new Named(Phrase.of(row.get("words")), row.get("role")));
        }
        for (CSVRecord row : rows("kinds.csv")) {
            words.kinds.add(
                    new Meaning(
                            Phrase.of(row.get("words")),
                            row.get("event"),
                            row.get("part"),
                            row.get("category")));
        }
        for (CSVRecord row : rows("labels.csv")) {
            words.labels.add(new Named(Phrase.of(row.get("words")), row.get("meaning")));
        }
        for (CSVRecord row : rows("currencies.csv")) {
            words.currencies.put(row.get("sign"), row.get("currency"));
        }
        return words;
    }

    static List<CSVRecord> rows(String file) {
        try (InputStream in = Vocabulary.class.getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException("not packed with the program: " + FOLDER + file);
            }
            return CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The roles a column's name may mean: of all names found in it the longest, and of those the
     * ones that are the whole name.
     */
    List<Role> roles(String name) {
        Phrase phrase = Phrase.of(name);
        int best = 0;
        List<Role> roles = new ArrayList<>();
        for (Named named : columns) {
            if (phrase.find(named.phrase()) < 0) {
                continue;
            }
            boolean whole = named.phrase().equals(phrase);
            int score = named.phrase().toString().length() + (whole ? 1_000 : 0);
            if (score > best) {
                roles.clear();
            }
            if (score >= best) {
                best = score;
                Role role = Role.of(named.meaning());
                if (!roles.contains(role)) {
                    roles.add(role);
                }
            }
        }
        return roles;
    }

    /** The role that the whole name means, where it is a name of one. */
    Optional<Role> wholeRole(String name) {
        Phrase phrase = Phrase.of(name);
        return columns.stream()
                .filter(c -> c.phrase().equals(phrase))
                .map(c -> Role.of(c.meaning()))
                .findFirst();
    }

    /** What words of the text mean for a row, the longest first, each word used once. */
    List<Meaning> meanings(String text) {
        List<Meaning> found = new ArrayList<>();
        unread(Phrase.of(text), found);
        return found;
    }

    /**
     * Words of the text that neither mean something for a row nor are known to change nothing, such
     * as {@code of}; numbers, codes and single letters are none.
     */
    List<String> unknown(String text) {
        Phrase rest = unread(Phrase.of(text), new ArrayList<>());
        List<String> unknown = new ArrayList<>();
        for (String word : rest.words()) {
            Phrase alone = new Phrase(List.of(word));
            boolean plain =
                    labels.stream()
                            .anyMatch(l -> l.meaning().equals("plain") && l.phrase().equals(alone));
            if (word.matches("\\p{L}{2,}") && !plain) {
                unknown.add(word);
            }
        }
        return unknown;
    }

    /** Adds what the words mean; gives what is left. */
    private Phrase unread(Phrase text, List<Meaning> found) {
        Phrase rest = text;
        while (!rest.isEmpty()) {
            Optional<Meaning> longest = Optional.empty();
            int length = 0;
            for (Meaning meaning : kinds) {
                int size = meaning.phrase().toString().length();
                if (size > length && rest.find(meaning.phrase()) >= 0) {
                    longest = Optional.of(meaning);
                    length = size;
                }
            }
            if (longest.isEmpty()) {
                break;
            }
            Phrase phrase = longest.get().phrase();
            for (Meaning meaning : kinds) {
                if (meaning.phrase().equals(phrase) && !isKnown(found, meaning)) {
                    found.add(meaning);
                }
            }
            rest = without(rest, phrase);
        }
        return rest;
    }

    private static boolean isKnown(List<Meaning> found, Meaning meaning) {
        return found.stream()
                .anyMatch(
                        f ->
                                f.event().equals(meaning.event())
                                        && f.part().equals(meaning.part())
                                        && f.category().equals(meaning.category()));
    }

    private static Phrase without(Phrase phrase, Phrase part) {
        int at = phrase.find(part);
        List<String> rest = new ArrayList<>(phrase.words().subList(0, at));
        rest.add("#"); // keeps words apart that did not stand together
        rest.addAll(phrase.words().subList(at + part.words().size(), phrase.words().size()));
        return rest.stream().allMatch("#"::equals) ? new Phrase(List.of()) : new Phrase(rest);
    }

    /** Whether the text holds words for this label: {@code total}, {@code count} and the like. */
    boolean isLabel(String text, String meaning) {
        Phrase phrase = Phrase.of(text);
        return labels.stream()
                .anyMatch(l -> l.meaning().equals(meaning) && phrase.find(l.phrase()) >= 0);
    }

    /** Signs of currencies, and the code each stands for; empty where several share it. */
    Map<String, String> currencies() {
        return currencies;
    }
}
