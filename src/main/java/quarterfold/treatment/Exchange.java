package quarterfold.treatment;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quarterfold.law.Law;
import quarterfold.ledger.Amounts;
import quarterfold.ledger.Entry;
import quarterfold.ledger.HeldRate;
import quarterfold.ledger.Line;
import quarterfold.ledger.Particular;
import quarterfold.ledger.Particulars;
import quarterfold.ledger.Profile;
import quarterfold.ledger.Publisher;
import quarterfold.ledger.Settings;
import quarterfold.money.Amount;
import quarterfold.money.ExchangeRate;
import quarterfold.money.Rounding;

/**
 * Brings entries in another currency into the return's: VATA 1994 Sch 6 para 11, at the rate of the
 * tax point, never of the payment. The rate is the tax authority's for the calendar month, or
 * another the book chose. Each amount is converted by itself, to four decimals, or to the penny in
 * a book that rounds each line; VAT that the document states in the return's currency is taken as
 * printed. For one thread.
 */
public final class Exchange {

    private static final String ECB = "exchange-rates=ecb";
    private static final int PROFILES_HELD = 10_000;

    private final String home;
    private final Publisher publisher;
    private final Rates rates;
    private final Optional<Rounding> lineRounding;
    private final Map<String, List<HeldRate>> ofCurrency = new HashMap<>();
    private final Map<Wanted, List<HeldRate>> found = new HashMap<>();
    private final IdentityHashMap<Profile, Profile> profiles = new IdentityHashMap<>();

    /** The rates a ledger holds. */
    public interface Rates {

        /** No rate is held. */
        Rates NONE = (publisher, currency) -> List.of();

        List<HeldRate> of(Publisher publisher, String currency);
    }

    /** A rate of a day. */
    private record Wanted(String currency, LocalDate day) {}

    /**
     * An entry in the return's currency, with how it came into it where it was in another; as it
     * was where no rate is held.
     *
     * @param stated the entry in its own currency
     */
    record Exchanged(Entry stated, Entry entry, Optional<Conversion> conversion) {

        static Exchanged as(Entry stated) {
            return new Exchanged(stated, stated, Optional.empty());
        }

        /** The entry whose VAT is held against its rate: as the document prints it, if it does. */
        Entry printed() {
            return stated.amounts().vat().isPresent() ? stated : entry;
        }

        /** The figures of {@link #printed}. */
        Figures printed(Figures figures) {
            Amounts amounts = printed().amounts();
            return conversion.isEmpty() || printed().equals(entry)
                    ? figures
                    : new Figures(
                            Figures.valueWithoutTax(amounts), amounts.vat().orElse(Amount.ZERO));
        }
    }

    /** With the rounding the settings have. */
    public Exchange(Law law, Settings settings, Rates rates) {
        this(law, settings, rates, Context.lineRounding(settings.roundingPerLine()));
    }

    private Exchange(Law law, Settings settings, Rates rates, Optional<Rounding> lineRounding) {
        this.home = settings.currency();
        this.publisher =
                law.choices().holds(ECB, settings.choices())
                        ? Publisher.ECB
                        : Publisher.TAX_AUTHORITY;
        this.rates = rates;
        this.lineRounding = lineRounding;
    }

    static Exchange of(Context context) {
        return new Exchange(
                context.law(),
                context.settings(),
                context.related().rates(),
                context.lineRounding());
    }

    /** The entry in the return's currency, at the rate of its tax point. */
    Exchanged of(Entry entry) {
        if (isHome(entry)) {
            return Exchanged.as(entry);
        }
        String currency = entry.profile().currency();
        List<HeldRate> held = held(currency, day(entry));
        if (held.isEmpty()) {
            return Exchanged.as(entry);
        }
        ExchangeRate rate = Conversion.rate(currency, home, held);
        Line line = entry.line();
        Amounts amounts = amounts(line, rate);
        Entry converted =
                new Entry(
                        entry.number(),
                        entry.source(),
                        line.worth(home(line.profile()), amounts, particulars(line, rate)));
        return new Exchanged(
                entry,
                converted,
                Optional.of(new Conversion(currency, home, amounts.money(), held)));
    }

    /** The same entry alone. */
    Entry home(Entry entry) {
        return isHome(entry) ? entry : of(entry).entry();
    }

    boolean isHome(Entry entry) {
        return entry.profile().currency().equals(home);
    }

    /** The same profile in the return's currency. */
    Profile home(Profile profile) {
        if (profile.currency().equals(home)) {
            return profile;
        }
        if (profiles.size() >= PROFILES_HELD) {
            profiles.clear();
        }
        return profiles.computeIfAbsent(profile, p -> p.in(home));
    }

    private Amount of(Amount amount, ExchangeRate rate) {
        return lineRounding.map(r -> rate.of(amount, r)).orElseGet(() -> rate.of(amount));
    }

    private Amounts amounts(Line line, ExchangeRate rate) {
        Amounts printed = line.amounts();
        Optional<Amount> vat = line.particulars().amount(Particular.STERLING_VAT);
        if (vat.isEmpty()) {
            return new Amounts(
                    printed.net().map(a -> of(a, rate)),
                    printed.vat().map(a -> of(a, rate)),
                    printed.gross().map(a -> of(a, rate)));
        }
        Optional<Amount> net =
                printed.net()
                        .or(() -> printed.gross().flatMap(g -> printed.vat().map(g::minus)))
                        .map(a -> of(a, rate))
                        .or(() -> printed.gross().map(g -> of(g, rate).minus(vat.get())));
        return new Amounts(net, vat, net.map(vat.get()::plus));
    }

    /** The amounts beside the price are in its currency too, but for VAT in the return's. */
    private Particulars particulars(Line line, ExchangeRate rate) {
        Particulars stated = line.particulars();
        for (Particular other : List.of(Particular.COST, Particular.CONSIGNMENT)) {
            Optional<Amount> amount = stated.amount(other);
            if (amount.isPresent()) {
                stated = stated.with(other, of(amount.get(), rate).toString());
            }
        }
        return stated;
    }

    private static LocalDate day(Entry entry) {
        return entry.line().particulars().day(Particular.EXCHANGE_DAY).orElseGet(entry::taxPoint);
    }

    /** The rates that make the rate of a day; nothing where one of them is missing. */
    private List<HeldRate> held(String currency, LocalDate day) {
        return found.computeIfAbsent(new Wanted(currency, day), this::find);
    }

    private List<HeldRate> find(Wanted wanted) {
        LocalDate day = published(wanted.day());
        List<String> needed =
                List.of(wanted.currency(), home).stream()
                        .filter(c -> !c.equals(publisher.base()))
                        .toList();
        List<HeldRate> held =
                needed.stream()
                        .flatMap(
                                c ->
                                        ofCurrency
                                                .computeIfAbsent(c, k -> rates.of(publisher, k))
                                                .stream()
                                                .filter(r -> r.rate().holds(day))
                                                .limit(1))
                        .toList();
        return held.size() == needed.size() ? held : List.of();
    }

    /** The day whose rate a day has: nothing is published daily at a weekend. */
    private LocalDate published(LocalDate day) {
        if (publisher != Publisher.ECB) {
            return day;
        }
        return day.getDayOfWeek() == DayOfWeek.SATURDAY
                ? day.minusDays(1)
                : day.getDayOfWeek() == DayOfWeek.SUNDAY ? day.minusDays(2) : day;
    }

    /** The words for a rate that is not held: whose, of when, and what to import. */
    Map<String, String> lacking(Entry entry) {
        LocalDate day = published(day(entry));
        boolean daily = publisher == Publisher.ECB;
        String when = daily ? "on " + day : "in " + YearMonth.from(day);
        return Map.of(
                "publisher",
                publisher.words(),
                "when",
                when,
                "file",
                daily
                        ? "its file of that day, or state as exchange_day the last day before on which it published one"
                        : "its file of the rates for that month, CSV or XML");
    }
}
