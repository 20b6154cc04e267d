package quarterfold.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import quarterfold.money.Amount;

/**
 * A statement of one account ({@code Stmt}) while it is read: what it says of itself, and what its
 * booked entries come to. Of a statement in pages this is one page, or all that were joined to it.
 */
final class BankStatement {
    /** A balance by its code: {@code OPBD}, {@code PRCD}, {@code CLBD} or {@code ITBD}. */
    private record Balance(String code, Amount amount) {}

    private static final List<String> CODES = List.of("OPBD", "PRCD", "CLBD", "ITBD");
    private static final List<String> OPENING = List.of("OPBD", "PRCD");

    private final int number;
    private String id = "";
    private String account = "";
    private int page = 1;
    private boolean isLast = true;
    private int lastPage = 1;
    private final List<Balance> balances = new ArrayList<>();
    private final Set<String> currencies = new TreeSet<>();
    private long entries;
    private long reversals;
    private Amount sum = Amount.ZERO;
    private Amount reversed = Amount.ZERO;
    private BankLines lines = new BankLines("");

    /** {@code number}: which it is in the file, from 1. */
    BankStatement(int number, int page, boolean isLast) {
        this.number = number;
        page(page, isLast);
    }

    private void page(int page, boolean isLast) {
        this.page = page;
        this.lastPage = page;
        this.isLast = isLast;
    }

    /** Reads an element of the statement that is no entry; passes over those that say nothing. */
    void read(XmlPull xml, BankCells cells) throws BadFile {
        BankCells.Place place = new BankCells.Place(xml.place(), "Stmt/" + xml.name());
        switch (xml.name()) {
            case "Id" -> id = xml.text();
            case "StmtPgntn" -> {
                XmlTexts pages = XmlTexts.within(xml);
                page(pageNumber(pages, ""), isLastPage(pages, ""));
            }
            case "Acct" -> account(XmlTexts.within(xml), cells, place);
            case "Bal" -> balance(XmlTexts.within(xml), cells, place);
            default -> {}
        }
    }

    /** Which page it is, as a pagination says that stands at the head of paths. */
    static int pageNumber(XmlTexts texts, String at) {
        String number = texts.first(at + "PgNb");
        return number.matches("\\d{1,5}") ? Integer.parseInt(number) : 1;
    }

    static boolean isLastPage(XmlTexts texts, String at) {
        String last = texts.first(at + "LastPgInd");
        return !last.equals("false") && !last.equals("0");
    }

    private void account(XmlTexts texts, BankCells cells, BankCells.Place place) {
        String number = texts.first("Id/IBAN", "Id/Othr/Id", "Prxy/Id").replace(" ", "");
        if (!number.isEmpty() && !Field.ACCOUNT.accepts(number)) {
            cells.wrong(place.at("Id"), number, Field.ACCOUNT.expected());
        } else {
            account = number;
            lines = new BankLines(number);
        }
    }

    private void balance(XmlTexts texts, BankCells cells, BankCells.Place place) {
        String code = texts.first("Tp/CdOrPrtry/Cd");
        if (CODES.contains(code)) {
            cells.signed(texts, "Amt", texts.first("CdtDbtInd"), place)
                    .ifPresent(a -> balances.add(new Balance(code, a)));
            cells.currency(texts, "Amt", place).ifPresent(currencies::add);
        }
    }

    /** Counts a booked entry. */
    void add(BankEntry entry) {
        entries++;
        sum = sum.plus(entry.amount());
        currencies.add(entry.currency());
        if (entry.isReversal()) {
            reversals++;
            reversed = reversed.plus(entry.amount());
        }
    }

    /** Whether the other is the next page of this one. */
    boolean isContinuedBy(BankStatement next) {
        return !isLast && account.equals(next.account) && next.page == lastPage + 1;
    }

    /** Joins the next page. */
    void join(BankStatement next) {
        lastPage = next.lastPage;
        isLast = next.isLast;
        balances.addAll(next.balances);
        currencies.addAll(next.currencies);
        entries += next.entries;
        reversals += next.reversals;
        sum = sum.plus(next.sum);
        reversed = reversed.plus(next.reversed);
    }

    /** Makes the lines of its entries. */
    BankLines lines() {
        return lines;
    }

    String account() {
        return account.isEmpty() ? "that is not named" : account;
    }

    /** Its own name, or which it is in the file. */
    String name() {
        return id.isEmpty() ? "no. " + number : id;
    }

    /** The balance its booked entries start from; of a later page alone, its interim one. */
    Optional<Amount> opening() {
        for (String code : OPENING) {
            Optional<Amount> first = first(code);
            if (first.isPresent()) {
                return first;
            }
        }
        return page > 1 ? first("ITBD") : Optional.empty();
    }

    /** The balance they lead to; of pages that are not the last, the interim one. */
    Optional<Amount> closing() {
        return last("CLBD").or(() -> isLast ? Optional.empty() : last("ITBD"));
    }

    private Optional<Amount> first(String code) {
        return balances.stream()
                .filter(b -> b.code().equals(code))
                .map(Balance::amount)
                .findFirst();
    }

    private Optional<Amount> last(String code) {
        return balances.stream()
                .filter(b -> b.code().equals(code))
                .map(Balance::amount)
                .reduce((a, b) -> b);
    }

    /** The currencies of its entries and balances; one, in a sound statement. */
    Set<String> currencies() {
        return currencies;
    }

    /** How many booked entries there are. */
    long entries() {
        return entries;
    }

    /** What the booked entries come to. */
    Amount sum() {
        return sum;
    }

    /** How many of them are marked as reversals. */
    long reversals() {
        return reversals;
    }

    /** What those come to. */
    Amount reversed() {
        return reversed;
    }
}
