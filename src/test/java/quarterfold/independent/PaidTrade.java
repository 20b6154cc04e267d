package quarterfold.independent;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a business under cash accounting invoices and is invoiced. Output tax is due when the money
 * comes and input tax is claimed when it goes (VAT Regulations 1995 regs 57 and 58; VAT Notice
 * 731), each line of a document by its share of the payment; what is never paid is never on a
 * return.
 */
final class PaidTrade {

    private final Trader trader;
    private final Optional<LocalDate> left;
    private final Optional<LocalDate> last;
    private int documents;

    /**
     * @param left the first day after the scheme, where it is left
     * @param last the last day on which what was supplied under it counts, where it is left
     */
    PaidTrade(Trader trader, Optional<LocalDate> left, Optional<LocalDate> last) {
        this.trader = trader;
        this.left = left;
        this.last = last;
    }

    void happen(Dice dice, LocalDate day, Sheets sheets) {
        switch (dice.between(1, 8)) {
            case 1, 2, 3 -> invoice(dice, day, sheets);
            case 4, 5 -> bill(dice, day, sheets);
            case 6 -> paidOnOneDay(dice, day, sheets);
            case 7 -> credit(dice, day, sheets);
            default -> outside(dice, day, sheets);
        }
    }

    private boolean underScheme(LocalDate day) {
        return left.filter(l -> !day.isBefore(l)).isEmpty();
    }

    /** Several lines at several rates, paid by and by. */
    private void invoice(Dice dice, LocalDate day, Sheets sheets) {
        String document = "S-" + ++documents;
        List<Price> lines = new ArrayList<>();
        BigDecimal whole = BigDecimal.ZERO;
        int most = dice.between(1, 3);
        for (int i = 0; i < most; i++) {
            BigDecimal rate = dice.of(List.of(Vat.standard(day), Vat.REDUCED, Vat.NONE));
            Price price = Price.atRate(dice, trader, rate, dice.pounds());
            lines.add(price);
            whole = whole.add(price.total());
            named(sheets.row(day, "sale"), document, "Example customer")
                    .put(price)
                    .put("customer", "business");
        }
        Parts parts = payments(dice, day, whole, "customer-payment", document, sheets);
        for (Price line : lines) {
            count(day, parts.of(line.vat()), line.vat(), 1, sheets);
            count(day, parts.of(line.net()), line.net(), 6, sheets);
        }
    }

    /** A supplier's, whose invoice may come after it is paid: reg 29(1) as well. */
    private void bill(Dice dice, LocalDate day, Sheets sheets) {
        String document = "B-" + ++documents;
        Price price = printed(dice, day);
        Sheets.Row row = bought(sheets.row(day, "purchase"), document).put(price);
        Parts parts = payments(dice, day, price.total(), "supplier-payment", document, sheets);
        Map<LocalDate, BigDecimal> vat = parts.of(price.vat());
        Map<LocalDate, BigDecimal> net = parts.of(price.net());
        if (left.isEmpty() && dice.oneIn(3)) {
            LocalDate held = day.plusDays(dice.between(0, 120));
            row.put("held", held.toString());
            vat = notBefore(held, vat);
            net = notBefore(held, net);
        }
        count(day, vat, price.vat(), 4, sheets);
        count(day, net, price.net(), 7, sheets);
    }

    private static Map<LocalDate, BigDecimal> notBefore(
            LocalDate held, Map<LocalDate, BigDecimal> parts) {
        Map<LocalDate, BigDecimal> later = new TreeMap<>();
        parts.forEach(
                (day, part) -> later.merge(day.isBefore(held) ? held : day, part, BigDecimal::add));
        return later;
    }

    /** A document that states the day it was paid in full. */
    private void paidOnOneDay(Dice dice, LocalDate day, Sheets sheets) {
        LocalDate paid = day.plusDays(dice.between(0, 150));
        String document = "P-" + ++documents;
        if (dice.oneIn(2)) {
            Price price = Price.atRate(dice, trader, Vat.standard(day), dice.pounds());
            named(sheets.row(day, "sale"), document, "Example customer")
                    .put(price)
                    .put("customer", "business")
                    .put("paid", paid.toString());
            count(day, Map.of(paid, price.vat()), price.vat(), 1, sheets);
            count(day, Map.of(paid, price.net()), price.net(), 6, sheets);
        } else {
            Price price = printed(dice, day);
            bought(sheets.row(day, "expense"), document).put(price).put("paid", paid.toString());
            count(day, Map.of(paid, price.vat()), price.vat(), 4, sheets);
            count(day, Map.of(paid, price.net()), price.net(), 7, sheets);
        }
    }

    /** Money given back, on the day it is: a minus on the side it came from, reg 38(3) and (4). */
    private void credit(Dice dice, LocalDate day, Sheets sheets) {
        if (dice.oneIn(2)) {
            Price price = Price.atRate(dice, trader, Vat.standard(day), dice.pounds());
            sheets.row(day, "sale-refund").put(price);
            sheets.box(day, 1, price.vat().negate());
            sheets.box(day, 6, price.net().negate());
        } else {
            Price price = printed(dice, day);
            bought(sheets.row(day, "purchase-credit"), "C-" + ++documents).put(price);
            sheets.box(day, 4, price.vat().negate());
            sheets.box(day, 7, price.net().negate());
        }
    }

    /**
     * Not under the scheme: payment due more than six months after the invoice, and invoiced in
     * advance, reg 58(2)(e) and (f). Such a supply counts at its tax point.
     */
    private void outside(Dice dice, LocalDate day, Sheets sheets) {
        Price price = Price.atRate(dice, trader, Vat.standard(day), dice.pounds());
        String document = "T-" + ++documents;
        Sheets.Row row =
                named(sheets.row(day, "sale"), document, "Example customer")
                        .put(price)
                        .put("customer", "business")
                        .put("invoiced", day.toString());
        LocalDate paid = day.plusDays(dice.between(1, 100));
        boolean inside = false;
        if (dice.oneIn(2)) {
            LocalDate due = day.plusMonths(6).plusDays(dice.between(-1, 2));
            inside = !due.isAfter(day.plusMonths(6));
            row.put("sent", day.toString()).put("due", due.toString());
        } else {
            LocalDate sent = day.plusDays(dice.between(0, 10));
            inside = !sent.isAfter(day);
            row.put("sent", sent.toString());
        }
        payment(sheets, paid, "customer-payment", document, price.total());
        LocalDate counts = inside ? paid : day;
        count(day, Map.of(counts, price.vat()), price.vat(), 1, sheets);
        count(day, Map.of(counts, price.net()), price.net(), 6, sheets);
    }

    /**
     * An amount in a box on the days it is paid; after the scheme was left not later than its last
     * day, and then all that is unpaid: reg 61. A supply of after the scheme counts at once.
     */
    private void count(
            LocalDate supply,
            Map<LocalDate, BigDecimal> parts,
            BigDecimal whole,
            int box,
            Sheets sheets) {
        BigDecimal open = whole;
        if (!underScheme(supply)) {
            sheets.box(supply, box, whole);
            return;
        }
        for (Map.Entry<LocalDate, BigDecimal> part : parts.entrySet()) {
            LocalDate day = last.filter(part.getKey()::isAfter).orElse(part.getKey());
            sheets.box(day, box, part.getValue());
            open = open.subtract(part.getValue());
        }
        if (last.isPresent()) {
            sheets.box(last.get(), box, open);
        }
    }

    /** Up to three payments, of which one may be taken back; not always all there is to pay. */
    private Parts payments(
            Dice dice,
            LocalDate day,
            BigDecimal whole,
            String kind,
            String document,
            Sheets sheets) {
        Map<LocalDate, BigDecimal> paid = new TreeMap<>();
        BigDecimal open = whole;
        LocalDate when = day;
        int times = dice.between(0, 3);
        for (int i = 0; i < times && open.signum() > 0; i++) {
            when = when.plusDays(dice.between(0, 90));
            BigDecimal pence = open.movePointRight(2);
            BigDecimal part =
                    dice.oneIn(3)
                            ? open
                            : BigDecimal.valueOf(dice.between(1, pence.intValueExact()), 2);
            payment(sheets, when, kind, document, part);
            paid.merge(when, part, BigDecimal::add);
            open = open.subtract(part);
            if (dice.oneIn(8)) {
                when = when.plusDays(dice.between(1, 40)); // a cheque that was not honoured
                payment(sheets, when, kind, document, part.negate());
                paid.merge(when, part.negate(), BigDecimal::add);
                open = open.add(part);
            }
        }
        return new Parts(whole, paid);
    }

    private static void payment(
            Sheets sheets, LocalDate day, String kind, String document, BigDecimal amount) {
        named(
                        sheets.row(day, kind),
                        document,
                        kind.startsWith("customer") ? "Example customer" : "Example supplier")
                .put("gross", amount.toPlainString());
    }

    private Price printed(Dice dice, LocalDate day) {
        BigDecimal gross = dice.pounds();
        return Price.printed(dice, gross, Vat.inside(gross, Vat.standard(day), trader), Map.of());
    }

    private static Sheets.Row bought(Sheets.Row row, String document) {
        return named(row, document, "Example supplier")
                .put("party_country", "GB")
                .put("party_vat", "GB101747696")
                .put("evidence", "invoice");
    }

    private static Sheets.Row named(Sheets.Row row, String document, String party) {
        return row.put("document", document).put("party", party);
    }
}
