package quarterfold.papers;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import quarterfold.law.TableRows;
import quarterfold.ledger.Kind;

/** The treatment table as sections, one for each side of the business. */
final class TreatmentPages {

    private static final List<String> SECTIONS =
            List.of(
                    "Rules for more than one side",
                    "Sales",
                    "Purchases and services from abroad",
                    "Goods from abroad and imports",
                    "Other money");

    private final LawView view;
    private final Map<String, List<RuleBlock>> sections = new LinkedHashMap<>();

    TreatmentPages(LawView view) {
        this.view = view;
        Map<String, List<RuleBlock>> found =
                RuleBlock.all(view).stream()
                        .collect(Collectors.groupingBy(TreatmentPages::section));
        SECTIONS.stream()
                .filter(found::containsKey)
                .forEach(s -> sections.put(s, found.getOrDefault(s, List.of())));
    }

    private static String section(RuleBlock block) {
        Set<Kind.Side> sides = block.sides();
        if (sides.size() != 1) {
            return SECTIONS.get(0);
        }
        return switch (sides.iterator().next()) {
            case SALES -> SECTIONS.get(1);
            case PURCHASES -> SECTIONS.get(block.isOnGoods() ? 3 : 2);
            case IMPORTS -> SECTIONS.get(3);
            case MONEY -> SECTIONS.get(4);
        };
    }

    /** The headings of the sections that have rules. */
    List<String> titles() {
        return List.copyOf(sections.keySet());
    }

    String text() {
        StringBuilder text = new StringBuilder();
        sections.forEach(
                (title, blocks) -> {
                    text.append(Markdown.heading(2, title));
                    blocks.forEach(b -> text.append(b.text()));
                });
        return text.toString();
    }

    /** How the rules are to be read. */
    String guide() {
        StringBuilder text = new StringBuilder();
        text.append(
                Markdown.item(
                        "**The first rule that fits decides**, in the order of the rows of `treatments.csv`: each rule"
                                + " gives its row. So a rule says only what sets it apart from the rules of later rows,"
                                + " and what an earlier row takes never reaches it. The day is the tax point. An entry"
                                + " that no rule fits is in no box and is asked about."));
        text.append(
                Markdown.item(
                        "**When** lists what must all hold, apart by semicolons; what it does not name may be anything."));
        view.words()
                .together("kind")
                .forEach(
                        (words, kinds) ->
                                text.append(
                                        Markdown.item(
                                                "**%s** is: %s."
                                                        .formatted(
                                                                Words.capital(words),
                                                                String.join(", ", kinds)))));
        text.append(
                Markdown.item(
                        "Two rules in one heading are the supply and what reduces it (a refund, a discount, a supplier's"
                                + " credit): alike in everything but what the second says of itself."));
        return text.toString();
    }

    /** The rule of a row, alone. */
    String rule(TableRows.Row row) {
        return RuleBlock.of(view, row).text();
    }
}
