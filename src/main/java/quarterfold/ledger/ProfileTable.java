package quarterfold.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import quarterfold.money.Percent;

/** How a profile is told as the texts of table {@code profile}. */
final class ProfileTable {
    static final Interned.Texts<Profile> TEXTS =
            new Interned.Texts<>(
                    List.of(
                            "kind",
                            "currency",
                            "rate",
                            "party",
                            "party_country",
                            "party_vat",
                            "category",
                            "goods_from",
                            "goods_to",
                            "customer",
                            "customer_vat",
                            "channel",
                            "channel_collects",
                            "settlement",
                            "evidence",
                            "business_use"),
                    p ->
                            List.of(
                                    p.kind().code(),
                                    p.currency(),
                                    p.rate().code(),
                                    p.party(),
                                    p.partyCountry(),
                                    p.partyVat(),
                                    p.category(),
                                    p.from(),
                                    p.to(),
                                    p.customer().code(),
                                    p.customerVat(),
                                    p.channel(),
                                    p.channelCollects().code(),
                                    p.settlement(),
                                    p.evidence().code(),
                                    p.businessUse().toString()));

    private ProfileTable() {}

    /** Whether there is a profile for which the condition on its columns holds. */
    static boolean any(Connection connection, String condition, Object... values)
            throws SQLException {
        return Sql.number(
                        connection,
                        "select exists (select 1 from profile where " + condition + ")",
                        values)
                > 0;
    }

    /** The profile in the sixteen columns from the second. */
    static Profile read(ResultSet row) throws SQLException {
        return new Profile(
                coded(Kind.class, row.getString(2)),
                row.getString(3),
                new StatedRate(row.getString(4)),
                row.getString(5),
                row.getString(6),
                row.getString(7),
                row.getString(8),
                row.getString(9),
                row.getString(10),
                coded(Customer.class, row.getString(11)),
                row.getString(12),
                row.getString(13),
                coded(ChannelCollects.class, row.getString(14)),
                row.getString(15),
                coded(Evidence.class, row.getString(16)),
                Percent.of(row.getString(17)));
    }

    private static <E extends Enum<E> & Coded> E coded(Class<E> type, String code) {
        return Coded.find(type, code)
                .orElseThrow(
                        () ->
                                new IllegalStateException(
                                        "the ledger holds the %s '%s', which this program does not know"
                                                .formatted(type.getSimpleName(), code)));
    }
}
