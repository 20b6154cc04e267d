package quarterfold.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import quarterfold.money.Amount;

/**
 * One payment behind an entry of a bank statement, in the entry's words and its own: who is on the
 * other side, and which references and words it carries. A column of the bank's that no field has
 * becomes a note under its own name.
 *
 * @param amount positive where it comes to the account
 * @param own the texts of the transaction alone ({@code TxDtls})
 * @param part which of how many, such as {@code 2 of 3}; empty where it is the whole entry
 */
record BankTransaction(BankEntry entry, Amount amount, XmlTexts own, String part) {

    /** What ISO 20022 has a bank write where the payer gave no reference. */
    private static final String NOT_PROVIDED = "NOTPROVIDED";

    private static final List<String> NOTED_OF_ENTRY =
            List.of(
                    "NtryRef",
                    "AcctSvcrRef",
                    "BkTxCd/Domn/Cd",
                    "BkTxCd/Domn/Fmly/Cd",
                    "BkTxCd/Domn/Fmly/SubFmlyCd",
                    "BkTxCd/Prtry/Cd",
                    "Chrgs/TtlChrgsAndTaxAmt",
                    "Btch/PmtInfId",
                    "Btch/NbOfTxs",
                    "AddtlNtryInf");

    private static final List<String> NOTED =
            List.of(
                    "Refs/AcctSvcrRef",
                    "Refs/EndToEndId",
                    "Refs/MndtId",
                    "Refs/TxId",
                    "AmtDtls/InstdAmt/Amt@Ccy",
                    "AmtDtls/InstdAmt/Amt",
                    "AmtDtls/TxAmt/CcyXchg/XchgRate",
                    "AmtDtls/InstdAmt/CcyXchg/XchgRate",
                    "Chrgs/TtlChrgsAndTaxAmt",
                    "RltdPties/DbtrAcct/Id/IBAN",
                    "RltdPties/DbtrAcct/Id/Othr/Id",
                    "RltdPties/CdtrAcct/Id/IBAN",
                    "RltdPties/CdtrAcct/Id/Othr/Id",
                    "RltdPties/UltmtDbtr/Pty/Nm",
                    "RltdPties/UltmtDbtr/Nm",
                    "RltdPties/UltmtCdtr/Pty/Nm",
                    "RltdPties/UltmtCdtr/Nm",
                    "RmtInf/Strd/RfrdDocInf/Nb",
                    "RmtInf/Strd/CdtrRefInf/Ref",
                    "RmtInf/Strd/AddtlRmtInf",
                    "RtrInf/Rsn/Cd",
                    "RtrInf/Rsn/Prtry",
                    "RtrInf/AddtlInf",
                    "AddtlTxInf");

    /**
     * Who is on the other side: the payer of what comes in, the payee of what goes out. A reversal
     * names the parties of the payment it takes back.
     */
    String party() {
        return name((amount.signum() > 0) != entry.isReversal() ? "Dbtr" : "Cdtr");
    }

    /** A debtor or creditor by name, in the shapes of all versions. */
    private String name(String role) {
        String at = "RltdPties/" + role;
        return own.first(at + "/Pty/Nm", at + "/Nm", at + "/Agt/FinInstnId/Nm");
    }

    /** The reference the payment carries: a creditor's, a document's number, or the payer's own. */
    String reference() {
        String structured = own.first("RmtInf/Strd/CdtrRefInf/Ref", "RmtInf/Strd/RfrdDocInf/Nb");
        return structured.isEmpty() ? payersReference() : structured;
    }

    private String payersReference() {
        String reference = own.first("Refs/EndToEndId");
        return reference.equals(NOT_PROVIDED) ? "" : reference;
    }

    /** The bank's own reference, by which it knows the line; of an entry in parts, the part's. */
    String banksReference() {
        String ofPart = part.isEmpty() ? "" : own.first("Refs/AcctSvcrRef");
        return ofPart.isEmpty() ? entry.texts().first("AcctSvcrRef", "NtryRef") : ofPart;
    }

    /** The words the payment carries, or else the bank's own about it. */
    String words() {
        String words = String.join(" ", own.all("RmtInf/Ustrd"));
        String banks = words.isEmpty() ? own.first("AddtlTxInf") : words;
        return banks.isEmpty() ? entry.texts().first("AddtlNtryInf") : banks;
    }

    /** What no field has, as {@code name: text; …}. */
    String notes() {
        Map<String, List<String>> notes = new LinkedHashMap<>();
        Set<String> said =
                new HashSet<>(List.of(reference(), banksReference(), words(), NOT_PROVIDED));
        if (entry.isReversal()) {
            notes.put("RvslInd", List.of("true"));
        }
        if (entry.booked().isEmpty()) {
            notes.put("BookgDt", List.of("not stated"));
        }
        if (!part.isEmpty()) {
            notes.put("TxDtls", List.of(part));
        } else if (entry.count() > 1) {
            notes.put("TxDtls", List.of(Integer.toString(entry.count())));
        }
        for (String role : List.of("Dbtr", "Cdtr")) {
            note(notes, role, List.of(name(role)), Set.of(party()));
        }
        NOTED_OF_ENTRY.forEach(path -> note(notes, path, entry.texts().all(path), said));
        NOTED.forEach(path -> note(notes, path, own.all(path), said));
        List<String> texts = new ArrayList<>();
        notes.forEach((name, found) -> texts.add(name + ": " + String.join(", ", found)));
        return String.join("; ", texts);
    }

    private static void note(
            Map<String, List<String>> notes, String path, List<String> found, Set<String> said) {
        List<String> more = found.stream().filter(t -> !t.isEmpty() && !said.contains(t)).toList();
        if (!more.isEmpty()) {
            notes.merge(
                    path,
                    more,
                    (a, b) -> {
                        List<String> both = new ArrayList<>(a);
                        both.addAll(b);
                        return both;
                    });
        }
    }
}
