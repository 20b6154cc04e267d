package quarterfold.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

/** The layouts that sources were read with, each text kept once. */
final class LayoutTexts {
    private LayoutTexts() {}

    static void add(Connection connection, long source, String text) throws SQLException {
        String sha256 = Digest.of(text.getBytes(StandardCharsets.UTF_8));
        Sql.execute(
                connection,
                "insert into layout_text (sha256, text) values (?, ?) on conflict do nothing",
                sha256,
                text);
        Sql.execute(
                connection,
                "insert into source_layout (source, sha256) values (?, ?)",
                source,
                sha256);
    }

    static Optional<String> of(Connection connection, long source) throws SQLException {
        return Sql.first(
                connection,
                "select t.text from source_layout l join layout_text t on t.sha256 = l.sha256"
                        + " where l.source = ?",
                row -> row.getString(1),
                source);
    }
}
