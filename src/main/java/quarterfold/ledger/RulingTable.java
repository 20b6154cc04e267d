package quarterfold.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;

/** How a ruling is told as the texts of table {@code ruling}. */
final class RulingTable {

    /** What many closed entries share. */
    record Ruling(String treatment, String rule, String rate, String takenUp) {}

    static final Interned.Texts<Ruling> TEXTS =
            new Interned.Texts<>(
                    List.of("treatment", "rule", "rate", "taken_up"),
                    r -> List.of(r.treatment(), r.rule(), r.rate(), r.takenUp()));

    private RulingTable() {}

    /** The ruling in the four columns from the second. */
    static Ruling read(ResultSet row) throws SQLException {
        return new Ruling(row.getString(2), row.getString(3), row.getString(4), row.getString(5));
    }
}
