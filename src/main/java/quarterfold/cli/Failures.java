package quarterfold.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;
import quarterfold.law.LawException;
import quarterfold.ledger.IoText;
import quarterfold.ledger.LedgerException;

/** Turns what a command threw into a message and an exit code. */
final class Failures implements IExecutionExceptionHandler {

    private final Main main;

    Failures(Main main) {
        this.main = main;
    }

    @Override
    public int handleExecutionException(Exception fault, CommandLine line, ParseResult parsed) {
        PrintWriter err = line.getErr();
        trace(fault, err);
        if (fault instanceof LedgerException told) {
            told.getMessage().lines().map(Texts::plain).forEach(err::println);
            return told.fault().exitCode();
        }
        if (fault instanceof LawException told) {
            err.println("A law table cannot be used: " + told.getMessage());
            return ExitCode.OUR_FAULT;
        }
        if ((fault instanceof UncheckedIOException ? fault.getCause() : fault)
                instanceof IOException told) {
            err.println("A file cannot be read or written: " + Texts.plain(IoText.withFile(told)));
            return ExitCode.UNREADABLE;
        }
        return told(fault, err);
    }

    /** A fault that is none of the files', nor of what was asked. */
    int ours(Throwable fault, PrintWriter err) {
        trace(fault, err);
        return told(fault, err);
    }

    private void trace(Throwable fault, PrintWriter err) {
        if (main.trace()) {
            fault.printStackTrace(err);
        }
    }

    private static int told(Throwable fault, PrintWriter err) {
        err.printf(
                "This is a fault of quarterfold, not of your files: %s%n"
                        + "Nothing was half-entered. Please report it with the command and what --trace adds.%n",
                fault);
        return ExitCode.OUR_FAULT;
    }
}
