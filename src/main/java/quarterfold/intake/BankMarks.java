package quarterfold.intake;

import java.nio.ByteBuffer;
import java.util.List;

/**
 * Marks the entries of bank statements by what an entry says in every statement it stands in: its
 * account, day and money, and the reference the bank knows it by; where there is none, what its
 * transactions say. Many banks number the entries of each statement anew ({@code NtryRef}), so that
 * number is no part of it. For one thread.
 */
final class BankMarks {
    private static final List<String> OF_TRANSACTION =
            List.of(
                    "Amt",
                    "Refs/AcctSvcrRef",
                    "Refs/EndToEndId",
                    "Refs/TxId",
                    "RmtInf/Strd/CdtrRefInf/Ref",
                    "RmtInf/Strd/RfrdDocInf/Nb",
                    "RmtInf/Ustrd",
                    "RltdPties/Dbtr/Pty/Nm",
                    "RltdPties/Dbtr/Nm",
                    "RltdPties/Cdtr/Pty/Nm",
                    "RltdPties/Cdtr/Nm");

    private final TextDigest digest = new TextDigest();

    RowMark of(BankEntry entry, String account, long row) {
        digest.add(account)
                .add(entry.day().map(Object::toString).orElse(""))
                .add(entry.currency())
                .add(entry.amount().toString())
                .add(entry.isReversal() ? "reversal" : "");
        String reference = entry.texts().first("AcctSvcrRef");
        digest.add(reference);
        if (reference.isEmpty()) {
            digest.add(entry.texts().first("AddtlNtryInf"));
            entry.transactions().forEach(this::add);
        }
        ByteBuffer found = digest.take();
        return new RowMark(row, found.getLong(), found.getInt());
    }

    private void add(XmlTexts transaction) {
        for (String path : OF_TRANSACTION) {
            digest.add(String.join("\n", transaction.all(path)));
        }
    }
}
