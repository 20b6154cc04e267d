package quarterfold.intake;

/** Where the texts of a line are found that belong to no profile. */
record LineCells(Cell product, Cell description, Cell document, Cell order) {
    static LineCells of(FieldCells cells) {
        return new LineCells(
                cells.cell(Field.PRODUCT),
                cells.cell(Field.DESCRIPTION),
                cells.cell(Field.DOCUMENT),
                cells.cell(Field.ORDER));
    }
}
