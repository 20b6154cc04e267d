package quarterfold.ledger;

import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/**
 * The schema's versioned migrations. Kept apart so that opening a ledger that is up to date does
 * not load the library that runs them.
 */
final class Migrations {
    private Migrations() {}

    static void run(Path file) {
        try {
            flyway(file).migrate();
        } catch (FlywayException e) {
            throw new LedgerException(
                    LedgerException.Fault.UNREADABLE,
                    "%s: the ledger could not be brought to schema %d: %s"
                            .formatted(file, LedgerFile.SCHEMA, e.getMessage()),
                    e);
        }
    }

    static Flyway flyway(Path file) {
        return Flyway.configure(Migrations.class.getClassLoader())
                .dataSource("jdbc:sqlite:" + file.toAbsolutePath(), "", "")
                .locations("classpath:quarterfold/ledger/migration")
                .load();
    }
}
