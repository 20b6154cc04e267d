package quarterfold.intake;

import java.util.List;
import quarterfold.ledger.RaisedQuery;
import quarterfold.ledger.Source;

/** What became of one file: all of it was entered, or it was there already, or none of it was. */
public sealed interface ImportResult {

    /** The file's own name, without folders. */
    String name();

    /** 64 lower-case hexadecimal digits. */
    String sha256();

    /** The name of the layout it was read with; empty where none was found. */
    String layout();

    /** Rows read below the header. */
    long rowsRead();

    /** Entries now in the ledger from this file. */
    long entries();

    /** Rows that made no entry, each with its reason in the ledger. */
    long setAside();

    /** What has to be mended first, at most 1,000; empty unless refused. */
    List<Problem> problems();

    /** A file whose bytes are in the ledger. */
    sealed interface InLedger extends ImportResult permits Entered, AlreadyThere {
        Source source();

        @Override
        default String sha256() {
            return source().sha256();
        }

        @Override
        default String layout() {
            return source().layout();
        }

        @Override
        default long rowsRead() {
            return source().rowsRead();
        }

        @Override
        default long entries() {
            return source().entries();
        }

        @Override
        default long setAside() {
            return source().rowsSetAside();
        }

        @Override
        default List<Problem> problems() {
            return List.of();
        }
    }

    /**
     * The whole file is in the ledger.
     *
     * @param repeated rows set aside because an earlier file has them
     * @param queries the questions its reading raised
     */
    record Entered(Source source, Repeated repeated, List<RaisedQuery> queries)
            implements InLedger {
        @Override
        public String name() {
            return source.name();
        }
    }

    /**
     * The ledger has these bytes already; nothing was changed.
     *
     * @param name of the file brought now, which may differ from the source's
     */
    record AlreadyThere(String name, Source source) implements InLedger {}

    /**
     * Nothing was entered.
     *
     * @param rowsRead before reading had to stop, or all
     * @param more how many problems were found beyond those listed
     */
    record Refused(
            String name,
            String sha256,
            String layout,
            long rowsRead,
            List<Problem> problems,
            long more)
            implements ImportResult {
        @Override
        public long entries() {
            return 0;
        }

        @Override
        public long setAside() {
            return 0;
        }
    }
}
