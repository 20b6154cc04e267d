package quarterfold.intake;

import java.util.List;

/** Bank statements of an invented account, in the shapes of the versions of camt.053. */
public final class MadeStatement {
    public static final String ACCOUNT = "GB24QFLD00000012345678";

    private MadeStatement() {}

    /** A message of whole statements, {@code Stmt} and all that is in it. */
    public static String messageOf(String kind, String... statements) {
        return """
               <?xml version="1.0" encoding="UTF-8"?>
               <Document xmlns="urn:iso:std:iso:20022:tech:xsd:%s">
                 <BkToCstmrStmt>
                   <GrpHdr><MsgId>M-1</MsgId><CreDtTm>2026-10-01T02:00:00+01:00</CreDtTm></GrpHdr>
               %s  </BkToCstmrStmt>
               </Document>
               """
                .formatted(kind, String.join("", statements));
    }

    /** A message of version 8. */
    public static String message(String... statements) {
        return messageOf("camt.053.001.08", statements);
    }

    public static String statement(String id, String... parts) {
        return """
                   <Stmt>
                     <Id>%s</Id>
                     <Acct><Id><IBAN>%s</IBAN></Id><Ccy>GBP</Ccy></Acct>
               %s    </Stmt>
               """
                .formatted(id, ACCOUNT, String.join("", parts));
    }

    /** {@code amount}: negative where the account is overdrawn. */
    public static String balance(String code, String amount) {
        boolean overdrawn = amount.startsWith("-");
        return """
                     <Bal>
                       <Tp><CdOrPrtry><Cd>%s</Cd></CdOrPrtry></Tp>
                       <Amt Ccy="GBP">%s</Amt>
                       <CdtDbtInd>%s</CdtDbtInd>
                       <Dt><Dt>2026-09-30</Dt></Dt>
                     </Bal>
               """
                .formatted(
                        code,
                        overdrawn ? amount.substring(1) : amount,
                        overdrawn ? "DBIT" : "CRDT");
    }

    /** A booked entry of version 8 on 30 September 2026, with more elements after its status. */
    public static String entry(String amount, String more) {
        boolean out = amount.startsWith("-");
        return """
                     <Ntry>
                       <Amt Ccy="GBP">%s</Amt>
                       <CdtDbtInd>%s</CdtDbtInd>
                       <Sts><Cd>BOOK</Cd></Sts>
                       <BookgDt><Dt>2026-09-30</Dt></BookgDt>
                       %s
                     </Ntry>
               """
                .formatted(out ? amount.substring(1) : amount, out ? "DBIT" : "CRDT", more);
    }

    /** The transactions of an entry. */
    public static String transactions(String... each) {
        return "<NtryDtls>"
                + String.join(
                        "", List.of(each).stream().map(t -> "<TxDtls>" + t + "</TxDtls>").toList())
                + "</NtryDtls>";
    }

    /**
     * One statement as each version writes it: a payout with a reference of the channel, a payment
     * of an invoice by its number, and one that is not booked yet.
     */
    public static String ofVersion(int version) {
        boolean wrapped = version >= 8;
        String booked = wrapped ? "<Sts><Cd>BOOK</Cd></Sts>" : "<Sts>BOOK</Sts>";
        String pending = wrapped ? "<Sts><Cd>PDNG</Cd></Sts>" : "<Sts>PDNG</Sts>";
        String payer = party("Dbtr", "Quaylark Payments", wrapped);
        String payee = party("Cdtr", "Harbour Boxes & Tape", wrapped);
        String amount =
                version >= 4
                        ? "<Amt Ccy=\"GBP\">240.00</Amt><CdtDbtInd>DBIT</CdtDbtInd>"
                        : "<AmtDtls><TxAmt><Amt Ccy=\"GBP\">240.00</Amt></TxAmt></AmtDtls>";
        String body =
                balance("OPBD", "1000.00")
                        + balance("CLBD", "19360.00")
                        + """
                             <Ntry>
                               <NtryRef>1</NtryRef>
                               <Amt Ccy="GBP">18600.00</Amt>
                               <CdtDbtInd>CRDT</CdtDbtInd>
                               %s
                               <BookgDt><DtTm>2026-09-30T00:00:00+02:00</DtTm></BookgDt>
                               <ValDt><Dt>2026-10-01</Dt></ValDt>
                               <AcctSvcrRef>HB-77120</AcctSvcrRef>
                               <BkTxCd><Domn><Cd>PMNT</Cd><Fmly><Cd>RCDT</Cd><SubFmlyCd>DMCT</SubFmlyCd></Fmly></Domn></BkTxCd>
                               <NtryDtls><TxDtls>
                                 <Refs><EndToEndId>QL-0418</EndToEndId></Refs>
                                 <RltdPties>%s<DbtrAcct><Id><IBAN>GB97QFLD00000087654321</IBAN></Id></DbtrAcct></RltdPties>
                                 <RmtInf><Ustrd>Quaylark payout QL-0418,</Ustrd><Ustrd>September sales</Ustrd></RmtInf>
                               </TxDtls></NtryDtls>
                             </Ntry>
                             <Ntry>
                               <Amt Ccy="GBP">240.00</Amt>
                               <CdtDbtInd>DBIT</CdtDbtInd>
                               %s
                               <BookgDt><Dt>2026-09-30</Dt></BookgDt>
                               <AcctSvcrRef>HB-77121</AcctSvcrRef>
                               <BkTxCd><Prtry><Cd>FPO</Cd></Prtry></BkTxCd>
                               <NtryDtls><TxDtls>
                                 <Refs><EndToEndId>NOTPROVIDED</EndToEndId></Refs>
                                 %s
                                 <RltdPties>%s</RltdPties>
                                 <RmtInf><Strd><RfrdDocInf><Nb>HX-2210</Nb></RfrdDocInf></Strd></RmtInf>
                               </TxDtls></NtryDtls>
                               <AddtlNtryInf>Faster payment</AddtlNtryInf>
                             </Ntry>
                             <Ntry>
                               <Amt Ccy="GBP">99.50</Amt>
                               <CdtDbtInd>DBIT</CdtDbtInd>
                               %s
                               <BkTxCd><Prtry><Cd>DD</Cd></Prtry></BkTxCd>
                             </Ntry>
                       """
                                .formatted(
                                        booked,
                                        payer,
                                        booked,
                                        version >= 4 ? amount : "",
                                        payee,
                                        pending);
        return messageOf("camt.053.001.%02d".formatted(version), statement("2026-09", body));
    }

    private static String party(String role, String name, boolean wrapped) {
        String text = "<Nm>" + name.replace("&", "&amp;") + "</Nm>";
        return "<%s>%s</%s>".formatted(role, wrapped ? "<Pty>" + text + "</Pty>" : text, role);
    }
}
