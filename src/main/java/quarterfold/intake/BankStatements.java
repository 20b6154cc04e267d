package quarterfold.intake;

import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Bank statements of ISO 20022, camt.053: an account's booked entries between two balances. Read by
 * local names, so that all versions from 2 on are one; what they differ in is small (the status and
 * the parties are wrapped since version 8).
 */
final class BankStatements implements DocumentForm {
    static final String NAME = "camt.053";

    private static final int FIRST = 2;
    private static final int LAST = 14;
    private static final Pattern MESSAGE =
            Pattern.compile(".*[:$](camt\\.05[234]\\.\\d{3}\\.(\\d{2}))");

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public boolean fits(Head head, Brought file) {
        return MESSAGE.matcher(head.namespace()).matches();
    }

    @Override
    public Reading open(Brought file) throws BadFile, IOException {
        XmlPull xml = XmlPull.open(file.path(), file.name());
        boolean opened = false;
        try {
            xml.child(0);
            check(xml.namespace(), file.name());
            StatementReading reading = new StatementReading(NAME, file, xml);
            opened = true;
            return reading;
        } finally {
            if (!opened) {
                xml.close();
            }
        }
    }

    private static void check(String namespace, String name) throws BadFile {
        Matcher message = MESSAGE.matcher(namespace);
        if (!message.matches()) {
            throw new BadFile(
                    name,
                    "found the namespace %s; expected that of a bank statement, such as urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"
                            .formatted(Problem.quoted(namespace)));
        }
        String kind = message.group(1);
        if (kind.startsWith("camt.052")) {
            throw new BadFile(
                    name,
                    "found an account report of the running day (%s), which is not final; expected the statement, camt.053, of the same account"
                            .formatted(kind));
        }
        if (kind.startsWith("camt.054")) {
            throw new BadFile(
                    name,
                    "found a notification of single entries (%s), which states no balance; expected the statement, camt.053, of the same account"
                            .formatted(kind));
        }
        int version = Integer.parseInt(message.group(2));
        if (!kind.startsWith("camt.053.001.") || version < FIRST || version > LAST) {
            throw new BadFile(
                    name,
                    "found a bank statement in the form %s; expected a version from %d to %d, such as camt.053.001.08"
                            .formatted(kind, FIRST, LAST));
        }
    }
}
