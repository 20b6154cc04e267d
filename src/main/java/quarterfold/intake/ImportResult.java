package quarterfold.intake;

import java.util.List;
import java.util.Set;
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

    /** One word for what it holds, such as {@code settlement}; empty where that is not known. */
    String kind();

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
     * @param attached how many documents its rows name, which are kept with them
     * @param rates how many exchange rates it brought
     * @param currencies of its money, ISO 4217
     * @param queries the questions its reading raised
     */
    record Entered(
            Source source,
            String kind,
            Repeated repeated,
            long attached,
            long rates,
            Set<String> currencies,
            List<RaisedQuery> queries)
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
    record AlreadyThere(String name, Source source, String kind) implements InLedger {}

    /** A file of which nothing is read. */
    sealed interface Unread extends ImportResult permits Refused, NotEntered {
        @Override
        default String kind() {
            return "";
        }

        @Override
        default long entries() {
            return 0;
        }

        @Override
        default long setAside() {
            return 0;
        }
    }

    /** A file that is none to be entered, and why. */
    sealed interface NotEntered extends Unread permits KeptAsEvidence, PassedOver {

        /** In a few words, for a person. */
        String reason();

        @Override
        default String sha256() {
            return "";
        }

        @Override
        default String layout() {
            return "";
        }

        @Override
        default long rowsRead() {
            return 0;
        }

        @Override
        default List<Problem> problems() {
            return List.of();
        }
    }

    /**
     * A document that a row of another file names as its evidence, and that is kept with it.
     *
     * @param by the row, such as {@code receipts.csv row 5}
     */
    record KeptAsEvidence(String name, String by) implements NotEntered {
        @Override
        public String reason() {
            return "evidence of " + by;
        }
    }

    /** A file found in a folder or ZIP that is no report. */
    record PassedOver(String name, String reason) implements NotEntered {}

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
            implements Unread {

        /** A file refused before anything of it was read. */
        static Refused unread(String name, Problem problem) {
            return new Refused(name, "", "", 0, List.of(problem), 0);
        }
    }
}
