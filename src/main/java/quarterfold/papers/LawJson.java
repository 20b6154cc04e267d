package quarterfold.papers;

import quarterfold.law.TableRows;

/**
 * A row of a law table as JSON: table, row as a spreadsheet counts it, every cell by its column; of
 * a treatment also its conditions and boxes in words; and why it was not checked, where so.
 */
final class LawJson {

    private LawJson() {}

    /** One line of JSON, without a line end. */
    static String of(LawView view, TableRows table, TableRows.Row row) {
        return JsonLine.of(
                json -> {
                    json.writeStringField("table", table.name());
                    json.writeNumberField("row", row.number());
                    json.writeObjectFieldStart("cells");
                    for (String column : table.columns()) {
                        json.writeStringField(column, row.cell(column));
                    }
                    json.writeEndObject();
                    if (table.name().equals(LawView.TREATMENTS)) {
                        json.writeStringField("when", RuleBlock.when(view, row));
                        json.writeStringField("boxes", new BoxClauses(view).text(row));
                    }
                    json.writeArrayFieldStart("unchecked");
                    for (Unchecked.Mark mark : Unchecked.Mark.values()) {
                        if (mark.isOn(row)) {
                            json.writeString(mark.words());
                        }
                    }
                    json.writeEndArray();
                });
    }
}
