package quarterfold.treatment;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import quarterfold.law.Law;
import quarterfold.ledger.Entry;
import quarterfold.ledger.Profile;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.StatedRate;
import quarterfold.money.Amount;
import quarterfold.money.Percent;
import quarterfold.money.Rounding;

/** Words queries: the table's text with what the entry says filled in, VAT to the penny. */
public final class Questions {

    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    /** Questions about an entry that its file's reading has asked already, and by which code. */
    private static final Map<String, String> ASKED_OF_SOURCE =
            Map.of(
                    "credit-adds-to-claim", RaisedQuery.CREDIT_BELOW_NOTHING,
                    "made-out-to-another", RaisedQuery.DOCUMENT_OF_OTHERS);

    private final Context context;

    public Questions(Context context) {
        this.context = context;
    }

    /** A question about an entry that was not treated, such as one that came after a close. */
    public Query ask(String code, Entry entry) {
        Query query = ask(code, entry, Figures.none(entry.amounts()), Optional.empty(), Map.of());
        return query.isOpen()
                ? Answered.of(entry, context.answers())
                        .setAside()
                        .map(query::setAside)
                        .orElse(query)
                : query;
    }

    /** The question with the decision that names it, where one does. */
    public Query answered(Query query) {
        return context.answers().about(query).map(query::setAside).orElse(query);
    }

    /**
     * The same with more words, about an amount of VAT; set aside where a decision on the entry
     * says so.
     */
    public Query ask(String code, Entry entry, Amount vat, Map<String, String> more) {
        Query query = ask(code, entry, new Figures(Amount.ZERO, vat), Optional.empty(), Map.of());
        return context.answers()
                .settled(
                        entry,
                        new Query(
                                query.id(),
                                query.entry(),
                                query.place(),
                                filled(query.question(), more),
                                query.money(),
                                query.holdsClose(),
                                query.answer()));
    }

    /** A question about no single entry. */
    public Query ask(String code, String about, Amount money, Map<String, String> words) {
        Map<String, String> all = new LinkedHashMap<>(words);
        all.put("money", money.toString());
        Law.QueryText text = context.law().query(code);
        return answered(
                new Query(
                        about + "/" + code,
                        OptionalLong.empty(),
                        "",
                        filled(text.question(), all),
                        money,
                        text.holdsClose(),
                        ""));
    }

    Query ask(
            String code,
            Entry entry,
            Figures figures,
            Optional<Percent> rate,
            Map<String, String> more) {
        Profile profile = entry.profile();
        Amount money = entry.amounts().money();
        Amount vat = figures.vat().rounded(Rounding.NEAREST_PENNY);
        Map<String, String> words = new LinkedHashMap<>(more);
        words.put("this", Long.toString(entry.number()));
        words.put("money", isHome(profile) ? money.toString() : money + " " + profile.currency());
        String document = entry.line().document();
        words.put("document", document.isEmpty() ? "without a number" : document);
        words.put("vat", entry.amounts().vat().filter(v -> !v.isZero()).orElse(vat).toString());
        words.put("currency", profile.currency());
        words.put("rate", rate(profile.rate(), rate));
        words.put("date", entry.taxPoint().toString());
        words.put("party_vat", profile.partyVat());
        words.put("category", profile.category());
        words.put("channel", profile.channel());
        Law.QueryText text = context.law().query(code);
        Query query =
                answered(
                        new Query(
                                "E" + entry.number() + "/" + code,
                                OptionalLong.of(entry.number()),
                                context.files().name(entry.source()) + " row " + entry.line().row(),
                                filled(text.question(), words),
                                figures.vat().isZero() ? money : figures.vat(),
                                text.holdsClose(),
                                ""));
        return query.isOpen() && ASKED_OF_SOURCE.containsKey(code)
                ? answeredOfSource(query, entry, ASKED_OF_SOURCE.get(code))
                : query;
    }

    /** One decision answers what the reading of the file asks of the document, and this. */
    private Query answeredOfSource(Query query, Entry entry, String code) {
        Query ofSource =
                new Query(
                        "S%d/%s/%s".formatted(entry.source(), code, entry.line().document()),
                        OptionalLong.empty(),
                        query.place(),
                        query.question(),
                        query.money());
        return context.answers().about(ofSource).map(query::setAside).orElse(query);
    }

    private boolean isHome(Profile profile) {
        return profile.currency().equals(context.settings().currency());
    }

    private static String rate(StatedRate stated, Optional<Percent> used) {
        return stated.isStated() && stated.percent().isEmpty()
                ? stated.code()
                : stated.percent().or(() -> used).map(r -> r + "%").orElse("no rate");
    }

    /** Fills each word in once: what an entry says may itself hold braces. */
    private static String filled(String text, Map<String, String> words) {
        return PLACE.matcher(text)
                .replaceAll(
                        place ->
                                Matcher.quoteReplacement(
                                        words.getOrDefault(place.group(1), place.group())));
    }
}
