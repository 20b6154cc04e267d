package quarterfold.intake;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import quarterfold.ledger.Kind;

/** Finds what kind of entry a row's own words and a column's role make together. */
final class KindFinder {
    /** What words say of a row; a text each, empty where they say nothing. */
    record Said(String event, String part, String category) {
        /** Whether the row is words only. */
        boolean isNote() {
            return event.equals("note");
        }
    }

    private static final Map<Role, String> PARTS = new EnumMap<>(Role.class);

    static {
        PARTS.put(Role.GOODS, "goods");
        PARTS.put(Role.TOTAL, "goods");
        PARTS.put(Role.AMOUNT, "goods");
        PARTS.put(Role.DELIVERY, "delivery");
        PARTS.put(Role.DISCOUNT, "discount");
        PARTS.put(Role.FEE, "fee");
        PARTS.put(Role.ADVERT, "fee");
    }

    private final Vocabulary words;

    KindFinder(Vocabulary words) {
        this.words = words;
    }

    /** What the texts say together; nothing where they say nothing, or two things at once. */
    Optional<Said> said(List<String> texts) {
        Set<String> events = new TreeSet<>();
        Set<String> parts = new TreeSet<>();
        Set<String> categories = new TreeSet<>();
        for (Vocabulary.Meaning meaning : words.meanings(String.join(" | ", texts))) {
            events.add(meaning.event());
            parts.add(meaning.part());
            categories.add(meaning.category());
        }
        List.of(events, parts, categories).forEach(s -> s.remove(""));
        if (events.contains("refund")) {
            events.remove("sale");
        }
        if (parts.size() > 1) {
            parts.remove("goods");
        }
        if (categories.contains("advertising")) {
            categories.remove("channel-fee");
        }
        if (events.size() > 1 || parts.size() > 1 || (events.isEmpty() && parts.isEmpty())) {
            return Optional.empty();
        }
        return Optional.of(new Said(one(events), one(parts), one(categories)));
    }

    /** Words of the texts of which nothing is known, so that the others may mislead. */
    List<String> unknown(List<String> texts) {
        return words.unknown(String.join(" | ", texts));
    }

    /** Those of them that may make something else of what the others say, such as {@code no}. */
    List<String> turning(List<String> texts) {
        return unknown(texts).stream().filter(w -> words.isLabel(w, "turning")).toList();
    }

    private static String one(Set<String> texts) {
        return texts.stream().findFirst().orElse("");
    }

    /** What rows say of which a person says that they are sales, or refunds; else nothing. */
    static Optional<Said> event(Kind kind) {
        return Optional.ofNullable(
                switch (kind) {
                    case SALE -> new Said("sale", "", "");
                    case SALE_REFUND -> new Said("refund", "", "");
                    default -> null;
                });
    }

    /** The kind of a single amount whose row says this; nothing where it does not tell. */
    static Optional<Kind> kind(Said said) {
        return kind(said.event(), said.part());
    }

    /** The kind of an amount in a column of this role, on a row that says this. */
    static Optional<Kind> kind(Said said, Role role) {
        if (role == Role.REFUND) {
            return Optional.of(Kind.SALE_REFUND);
        }
        String part = PARTS.getOrDefault(role, "");
        boolean fee = part.equals("fee");
        if (fee && said.event().equals("refund")) {
            return Optional.of(Kind.FEE_REFUND);
        }
        if (fee) {
            return Optional.of(Kind.FEE);
        }
        boolean trade = said.event().equals("sale") || said.event().equals("refund");
        return trade && !part.isEmpty() && (said.part().isEmpty() || said.part().equals("goods"))
                ? kind(said.event(), part)
                : kind(said);
    }

    private static Optional<Kind> kind(String event, String part) {
        return Optional.ofNullable(
                switch (event + "/" + part) {
                    case "sale/", "sale/goods", "/goods" -> Kind.SALE;
                    case "sale/delivery" -> Kind.DELIVERY;
                    case "sale/discount", "/discount" -> Kind.DISCOUNT;
                    case "sale/fee", "/fee" -> Kind.FEE;
                    case "refund/", "refund/goods" -> Kind.SALE_REFUND;
                    case "refund/delivery" -> Kind.DELIVERY_REFUND;
                    case "refund/discount" -> Kind.DISCOUNT_REVERSED;
                    case "refund/fee" -> Kind.FEE_REFUND;
                    case "payout/" -> Kind.PAYOUT;
                    case "reserve/" -> Kind.RESERVE;
                    case "voucher/" -> Kind.VOUCHER;
                    case "compensation/", "compensation/goods" -> Kind.COMPENSATION;
                    case "purchase/", "purchase/goods" -> Kind.PURCHASE;
                    case "expense/" -> Kind.EXPENSE;
                    default -> null;
                });
    }

    static String category(Said said, Role role) {
        if (role == Role.ADVERT) {
            return "advertising";
        }
        return said.category().isEmpty() ? "channel-fee" : said.category();
    }
}
