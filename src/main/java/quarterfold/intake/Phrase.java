package quarterfold.intake;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A few words, made comparable: lower case, without accents, marks and runs of capitals. */
record Phrase(List<String> words) {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    private static final Pattern HUMP = Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})");
    private static final Pattern OTHER = Pattern.compile("[^\\p{L}\\p{N}#]+");

    static Phrase of(String text) {
        String humps = HUMP.matcher(text).replaceAll(" ");
        String plain =
                MARKS.matcher(Normalizer.normalize(humps, Normalizer.Form.NFD))
                        .replaceAll("")
                        .toLowerCase(Locale.ROOT)
                        .replace("ß", "ss")
                        .replace("ł", "l");
        return new Phrase(
                Stream.of(OTHER.split(plain, -1)).filter(word -> !word.isEmpty()).toList());
    }

    boolean isEmpty() {
        return words.isEmpty();
    }

    /** Where the other stands in this, word by word; -1 if nowhere. */
    int find(Phrase other) {
        for (int i = 0; i + other.words.size() <= words.size(); i++) {
            if (words.subList(i, i + other.words.size()).equals(other.words)) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public String toString() {
        return String.join(" ", words);
    }
}
