package quarterfold.cli;

/** The exit codes, after {@code sysexits.h} where it has one. */
final class ExitCode {
    static final int DONE = 0;

    /** A refused close, or a check that failed. */
    static final int REFUSED = 1;

    static final int USAGE = 2;

    /** The input is bad, and nothing of it was entered. */
    static final int BAD_INPUT = 65;

    /** A fault of the program itself. */
    static final int OUR_FAULT = 70;

    /** A file or the ledger cannot be read or written. */
    static final int UNREADABLE = 74;

    /** Interrupted, as by Ctrl-C: 128 and the number of the signal, as the system has it. */
    static final int INTERRUPTED = 130;

    private ExitCode() {}
}
