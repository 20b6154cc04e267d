package quarterfold.ledger;

import quarterfold.money.Percent;

/**
 * The facts that many lines share and that decide how VAT applies to them. The ledger keeps each
 * distinct profile once; a million settlement lines need only a few.
 *
 * <p>A text that was not stated is empty. Countries are ISO 3166 two-letter codes, with {@code XI}
 * for Northern Ireland. VAT numbers are as written.
 *
 * @param currency ISO 4217 code
 * @param from where the goods start, empty for the book's own stock
 * @param to where the goods go; empty for home, and not stated for a sale from stock abroad
 * @param settlement the channel's own name for the statement of one payout
 * @param businessUse the share used for the business, 0 to 100
 */
public record Profile(
        Kind kind,
        String currency,
        StatedRate rate,
        String party,
        String partyCountry,
        String partyVat,
        String category,
        String from,
        String to,
        Customer customer,
        String customerVat,
        String channel,
        ChannelCollects channelCollects,
        String settlement,
        Evidence evidence,
        Percent businessUse) {

    /** The same in another currency. */
    public Profile in(String otherCurrency) {
        return with(kind, otherCurrency);
    }

    /** The same of another kind. */
    Profile of(Kind otherKind) {
        return with(otherKind, currency);
    }

    private Profile with(Kind otherKind, String otherCurrency) {
        return new Profile(
                otherKind,
                otherCurrency,
                rate,
                party,
                partyCountry,
                partyVat,
                category,
                from,
                to,
                customer,
                customerVat,
                channel,
                channelCollects,
                settlement,
                evidence,
                businessUse);
    }

    /** A profile of which only the kind and the currency are known. */
    public static Profile of(Kind kind, String currency) {
        return of(kind, currency, "");
    }

    /** A profile of which only the kind, the currency and the party are known. */
    public static Profile of(Kind kind, String currency, String party) {
        return new Profile(
                kind,
                currency,
                StatedRate.NONE,
                party,
                "",
                "",
                "",
                "",
                "",
                Customer.CONSUMER,
                "",
                "",
                ChannelCollects.NO,
                "",
                Evidence.UNSTATED,
                Percent.HUNDRED);
    }
}
