package quarterfold.cli;

import java.util.regex.Pattern;
import quarterfold.law.Law;
import quarterfold.ledger.RaisedQuery;
import quarterfold.treatment.Query;

/** The shortest command that answers a query, with words to replace in capitals. */
final class Answering {

    private static final Pattern PLAIN = Pattern.compile("[\\w./:=@+-]+");
    private static final Pattern MEANT = Pattern.compile("[\"\\\\$`]");

    private Answering() {}

    static String command(Law law, Query query) {
        String what =
                query.entry().isPresent()
                        ? "--entry %d %s"
                                .formatted(
                                        query.entry().getAsLong(),
                                        law.answer(code(query)).orElse("--set-aside"))
                        : "--query %s %s".formatted(word(query.id()), ofQuery(query));
        return "quarterfold decide " + what + " --why WHY --who NAME";
    }

    private static String ofQuery(Query query) {
        return RaisedQuery.Name.parse(query.id()).filter(RaisedQuery.Name::isOfKind).isPresent()
                ? "--state kind=KIND"
                : "--set-aside";
    }

    /** Its code of {@code queries.csv}: after the entry's number. */
    private static String code(Query query) {
        return query.id().substring(query.id().indexOf('/') + 1);
    }

    /** A text as one word of a command line. */
    static String word(String text) {
        String plain = Texts.plain(text);
        return PLAIN.matcher(plain).matches()
                ? plain
                : '"' + MEANT.matcher(plain).replaceAll(found -> "\\\\\\" + found.group()) + '"';
    }
}
