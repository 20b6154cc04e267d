package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import quarterfold.intake.Layout.Numbers;

/**
 * Ways of writing that differ between the report a layout was made from and the one it is learned
 * from again. A layout reads one way alone: files in the other are refused, or read as what they do
 * not say, so a person is told.
 */
final class OldWays {
    private static final String WITH = "with the signs it is printed with";
    private static final String WITHOUT = "as money that goes out, printed without a minus";

    private OldWays() {}

    /**
     * What is told, for a person; nothing where both are written alike.
     *
     * @param book the book's currency, in which amounts are where a layout does not say
     */
    static List<String> notes(Layout old, Layout made, String book) {
        List<String> notes = new ArrayList<>();
        String now = made.currency().orElse("");
        String before = old.currency().orElse(book);
        boolean columns =
                Stream.of(old, made).anyMatch(l -> l.fields().containsKey(Field.CURRENCY));
        if (!now.isEmpty() && !now.equals(before) && !columns) {
            notes.add(told("amounts are in " + now, "in " + before, "read as " + now, made));
        }
        if (!old.dates().pattern().equals(made.dates().pattern())) {
            notes.add(
                    told(
                            "dates are read as " + made.dates().pattern(),
                            "as " + old.dates().pattern(),
                            "read as other days",
                            made));
        }
        if (!numbers(old.numbers()).equals(numbers(made.numbers()))) {
            notes.add(
                    told(
                            "amounts are read as " + numbers(made.numbers()),
                            "as " + numbers(old.numbers()),
                            "read as other amounts",
                            made));
        }
        for (String column : made.named()) {
            boolean both = old.needed().contains(column) && made.needed().contains(column);
            boolean out = made.outgoing().contains(column);
            if (both && out != old.outgoing().contains(column)) {
                notes.add(
                        told(
                                "'%s' is read %s".formatted(column, out ? WITHOUT : WITH),
                                out ? WITH : WITHOUT,
                                "entered the other way round",
                                made));
            }
        }
        return notes;
    }

    private static String told(String now, String before, String otherwise, Layout made) {
        return "%s now, and %s before: a file written as before may be refused or %s from now on; to read both, learn each with a name of its own, such as --name %s-2"
                .formatted(now, before, otherwise, made.name());
    }

    private static String numbers(Numbers numbers) {
        return (numbers.minor() > 0 ? "whole numbers of pence" : "1234" + numbers.decimal() + "50")
                + (numbers.letters() ? " CR" : "");
    }
}
