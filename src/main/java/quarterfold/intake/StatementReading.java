package quarterfold.intake;

import java.io.IOException;
import java.util.Optional;
import java.util.Set;

/**
 * A bank statement being read: a row is an entry ({@code Ntry}), counted through the file. Holds
 * one entry at a time.
 */
final class StatementReading implements Reading {
    private static final int DOCUMENT = 1;
    private static final int MESSAGE = 2;
    private static final int STATEMENT = 3;

    private final String layout;
    private final String file;
    private final XmlPull xml;
    private final Problems problems;
    private final BankCells cells;
    private final BankMarks marks = new BankMarks();
    private final StatementProof proof = new StatementProof();
    private Optional<BankStatement> statement = Optional.empty();
    private Optional<BankEntry> entry = Optional.empty();
    private BankLines lines = new BankLines("");
    private String place = "";
    private int statements;
    private int page = 1;
    private boolean isLastPage = true;
    private long row;

    /** {@code xml} stands at the root element. */
    StatementReading(String layout, Brought file, XmlPull xml) throws BadFile {
        this.layout = layout;
        this.file = file.name();
        this.xml = xml;
        this.problems = file.problems();
        this.cells = new BankCells(problems);
        if (!xml.child(DOCUMENT)) {
            throw xml.bad("found nothing in the root element; expected BkToCstmrStmt");
        }
        if (!xml.name().equals("BkToCstmrStmt")) {
            throw xml.bad(
                    "found the element %s; expected BkToCstmrStmt, as a camt.053 has it"
                            .formatted(Problem.quoted(xml.name())));
        }
    }

    @Override
    public String layout() {
        return layout;
    }

    @Override
    public String kind() {
        return "bank";
    }

    @Override
    public boolean next() throws BadFile {
        while (true) {
            if (statement.isPresent()) {
                BankStatement open = statement.get();
                if (!xml.child(STATEMENT)) {
                    proof.add(open);
                    statement = Optional.empty();
                } else if (xml.name().equals("Ntry")) {
                    readEntry(open);
                    return true;
                } else {
                    open.read(xml, cells);
                }
            } else if (!xml.child(MESSAGE)) {
                xml.end();
                return false;
            } else if (xml.name().equals("Stmt")) {
                statements++;
                statement = Optional.of(new BankStatement(statements, page, isLastPage));
            } else if (xml.name().equals("GrpHdr")) {
                readHeader();
            }
        }
    }

    /** Early versions number the pages of the message, not of the statement. */
    private void readHeader() throws BadFile {
        XmlTexts header = XmlTexts.within(xml);
        page = BankStatement.pageNumber(header, "MsgPgntn/");
        isLastPage = BankStatement.isLastPage(header, "MsgPgntn/");
    }

    private void readEntry(BankStatement of) throws BadFile {
        row++;
        place = xml.place();
        entry = BankEntry.read(xml, cells);
        lines = of.lines();
    }

    @Override
    public long read(RowReader.Output output) {
        if (entry.isEmpty()) {
            return 0;
        }
        BankEntry read = entry.get();
        if (!read.isBooked()) {
            output.setAside(
                    row,
                    "not booked: its status is %s, %s %s"
                            .formatted(read.status(), read.currency(), read.amount()));
            return 0;
        }
        statement.orElseThrow().add(read);
        if (read.amount().isZero()) {
            output.setAside(row, "no amount");
            return 0;
        }
        lines.give(read, row, output);
        return read.amount().tenThousandths();
    }

    /** Statements of one account may overlap: an entry of two is entered once. */
    @Override
    public RepeatRule repeats() {
        return new RepeatRule(RepeatRule.Meeting.ONCE, Set.of(), false);
    }

    @Override
    public RowMark mark() {
        return entry.map(e -> marks.of(e, lines.account(), row)).orElse(new RowMark(row, row, 0));
    }

    @Override
    public void fault(String fault) {
        problems.add(new Problem(place, "", fault));
    }

    @Override
    public void finish() throws BadFile {
        if (proof.statements() == 0) {
            throw new BadFile(file, "found no statement (Stmt) in it; expected at least one");
        }
    }

    @Override
    public void raise(Payouts.Raise raise) {
        proof.raise(raise);
    }

    @Override
    public void close() throws IOException {
        xml.close();
    }
}
