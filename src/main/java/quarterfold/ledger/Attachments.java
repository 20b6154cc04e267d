package quarterfold.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** The documents attached to rows of sources, in the order they came. Table {@code attachment}. */
public final class Attachments {
    private static final String ALL = "select * from attachment";

    private final Path file;
    private final Connection connection;

    Attachments(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    static void add(Connection connection, Attachment attachment) throws SQLException {
        Sql.execute(
                connection,
                "insert into attachment (source, row, file, sha256) values (?, ?, ?, ?)",
                attachment.source(),
                attachment.row(),
                attachment.file(),
                attachment.sha256());
    }

    public List<Attachment> all() {
        return list(ALL + " order by id");
    }

    /** Those of one source. */
    public List<Attachment> of(Source source) {
        return list(ALL + " where source = ? order by id", source.id());
    }

    /** Those of the row that an entry comes from. */
    public List<Attachment> of(Entry entry) {
        return list(
                ALL + " where source = ? and row = ? order by id",
                entry.source(),
                entry.line().row());
    }

    /** Where a document was attached first, if it was. */
    public Optional<Attachment> first(String sha256) {
        return list(ALL + " where sha256 = ? order by id limit 1", sha256).stream().findFirst();
    }

    private List<Attachment> list(String query, Object... cells) {
        return Transaction.run(
                file, () -> Sql.list(connection, query, Attachments::attachment, cells));
    }

    private static Attachment attachment(ResultSet row) throws SQLException {
        return new Attachment(
                row.getLong("source"),
                row.getLong("row"),
                row.getString("file"),
                row.getString("sha256"));
    }
}
