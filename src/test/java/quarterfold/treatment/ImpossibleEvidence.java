package quarterfold.treatment;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import quarterfold.law.Fact;
import quarterfold.ledger.Kind;

/** What no entry has together, since what its document supports follows from its other facts. */
final class ImpossibleEvidence {

    private static final Set<String> SUPPORTED = Set.of("yes", "number-fails", "overcharged");

    /** What another entry claims already. */
    private static final Set<String> AGAIN =
            Set.of("repeated", "import-vat", "fee-lines", "advance", "other-copy");

    private ImpossibleEvidence() {}

    /** Every word for what a document supports but these. */
    static Set<String> allBut(String... words) {
        return Fact.CLAIMS.words().stream()
                .filter(w -> !Set.of(words).contains(w))
                .collect(Collectors.toSet());
    }

    static List<Map<String, Set<String>>> of(Set<String> categories) {
        Set<String> purchases = kinds(Kind.Side.PURCHASES);
        Set<String> credits =
                purchases.stream()
                        .filter(k -> k.matches(".*-(credit|refund)"))
                        .collect(Collectors.toSet());
        Set<String> imports = kinds(Kind.Side.IMPORTS);
        Set<String> others =
                Stream.of(kinds(Kind.Side.SALES), kinds(Kind.Side.MONEY), Set.of("import-duty"))
                        .flatMap(Set::stream)
                        .collect(Collectors.toSet());
        Set<String> forEmployees = Set.of("travel", "toll");
        return List.of(
                Map.of("kind", others, "claims", allBut("no")),
                Map.of("kind", credits, "claims", AGAIN),
                Map.of(
                        "kind",
                        without(all(), Set.of("purchase", "expense")),
                        "claims",
                        Set.of("import-vat")),
                Map.of(
                        "kind",
                        without(all(), Set.of("purchase", "expense", "fee")),
                        "claims",
                        Set.of("fee-lines", "advance", "other-copy")),
                Map.of("settlement", Set.of("yes"), "claims", Set.of("fee-lines", "other-copy")),
                Map.of(
                        "supplier",
                        Set.of("eu", "elsewhere"),
                        "claims",
                        Set.of("import-vat", "fee-lines", "advance")),
                Map.of("vat", Set.of("unstated"), "claims", Set.of("import-vat")),
                Map.of(
                        "vat",
                        Set.of("nil"),
                        "kind",
                        Set.of("purchase"),
                        "liability",
                        Set.of("reverse-charge"),
                        "claims",
                        Set.of("import-vat")),
                Map.of(
                        "vat",
                        Set.of("nil", "unstated"),
                        "claims",
                        Set.of("fee-lines", "advance")),
                Map.of(
                        "settlement",
                        Set.of("yes"),
                        "evidence",
                        Set.of("unstated"),
                        "claims",
                        allBut("no")),
                Map.of("vat", Set.of("nil", "unstated"), "claims", Set.of("on-bill")),
                // which line of a certificate or statement counts
                Map.of(
                        "kind",
                        without(all(), imports),
                        "claims",
                        Set.of("met-again", "replaced", "on-bill")),
                Map.of(
                        "kind",
                        Set.of("import-vat-paid"),
                        "evidence",
                        without(Set.copyOf(Fact.EVIDENCE.words()), Set.of("import-certificate")),
                        "claims",
                        Set.of("met-again", "replaced", "on-bill")),
                Map.of(
                        "kind",
                        Set.of("import-vat-postponed"),
                        "evidence",
                        without(Set.copyOf(Fact.EVIDENCE.words()), Set.of("postponed-statement")),
                        "claims",
                        Set.of("met-again", "replaced", "on-bill")),
                // postponed import VAT is paid to no agent
                Map.of("kind", Set.of("import-vat-postponed"), "claims", Set.of("on-bill")),
                // in whose name
                Map.of("kind", purchases, "addressed", Set.of("other"), "claims", SUPPORTED),
                Map.of(
                        "kind",
                        purchases,
                        "addressed",
                        Set.of("business", "unstated"),
                        "claims",
                        Set.of("another-name")),
                Map.of(
                        "kind",
                        purchases,
                        "addressed",
                        Set.of("employee"),
                        "category",
                        forEmployees,
                        "claims",
                        Set.of("another-name")),
                Map.of(
                        "kind",
                        purchases,
                        "addressed",
                        Set.of("employee"),
                        "category",
                        without(categories, forEmployees),
                        "claims",
                        SUPPORTED),
                // the supplier's number
                Map.of(
                        "supplier_vat",
                        Set.of("none", "gb", "foreign"),
                        "claims",
                        Set.of("number-fails")),
                Map.of("supplier", Set.of("eu", "elsewhere"), "claims", Set.of("number-fails")),
                Map.of(
                        "kind",
                        purchases,
                        "supplier",
                        Set.of("gb", "ni", "unstated"),
                        "supplier_vat",
                        Set.of("gb-fails"),
                        "claims",
                        Set.of("yes", "overcharged")),
                // what an overcharge can be held against
                Map.of("vat", Set.of("nil", "unstated"), "claims", Set.of("overcharged")),
                Map.of(
                        "claims",
                        Set.of("overcharged"),
                        "liability",
                        Set.of(
                                "zero",
                                "exempt",
                                "outside",
                                "not-a-rate",
                                "margin",
                                "reverse-charge")),
                Map.of(
                        "supplier",
                        Set.of("eu", "elsewhere"),
                        "supplier_vat",
                        Set.of("none", "foreign", "gb-fails"),
                        "claims",
                        Set.of("overcharged")),
                // the importer is read in the party's number, and these are not the book's
                Map.of("kind", imports, "claims", Set.of("number-fails", "overcharged")),
                Map.of(
                        "kind",
                        imports,
                        "supplier_vat",
                        Set.of("gb", "gb-fails", "foreign"),
                        "claims",
                        Set.of("yes")),
                Map.of(
                        "kind",
                        imports,
                        "supplier_vat",
                        Set.of("none"),
                        "claims",
                        Set.of("another-name")),
                // goods on hand when the registration ended
                Map.of("kind", Set.of("stock-on-hand"), "on_hand", Set.of("no")),
                Map.of(
                        "kind",
                        Set.of("stock-on-hand"),
                        "on_hand",
                        Set.of("yes", "within-limit"),
                        "registration",
                        Set.of("before", "after")),
                Map.of(
                        "kind",
                        without(all(), Set.of("stock-on-hand")),
                        "on_hand",
                        Set.of("within-limit")));
    }

    private static Set<String> all() {
        return Arrays.stream(Kind.values()).map(Kind::code).collect(Collectors.toSet());
    }

    private static Set<String> kinds(Kind.Side side) {
        return Arrays.stream(Kind.values())
                .filter(k -> k.side() == side)
                .map(Kind::code)
                .collect(Collectors.toSet());
    }

    private static Set<String> without(Set<String> all, Set<String> some) {
        return all.stream().filter(w -> !some.contains(w)).collect(Collectors.toSet());
    }
}
