package packpot.data;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** One row of a table in models/, read by column name. A blank cell is "not known", never zero. */
public final class Row {
    private final String table;
    private final Map<String, String> cells;

    Row(String table, Map<String, String> cells) {
        this.table = table;
        this.cells = cells;
    }

    /** The text of a cell; empty when the cell is blank. */
    public String text(String column) {
        String cell = cells.get(column);
        if (cell == null) {
            throw new ModelDataException(table + " has no column \"" + column + "\"");
        }
        return cell.strip();
    }

    /** The text of a cell that must not be blank. */
    public String required(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            throw new ModelDataException(table + ": blank \"" + column + "\" in the row " + cells);
        }
        return text;
    }

    public double number(String column) {
        return optionalNumber(column)
                .orElseThrow(
                        () -> new ModelDataException(table + ": no number in \"" + column + "\" in the row " + cells));
    }

    public OptionalDouble optionalNumber(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(Double.parseDouble(text));
        } catch (NumberFormatException e) {
            throw new ModelDataException(table + ": \"" + text + "\" in \"" + column + "\" is not a number", e);
        }
    }

    /** The parts of a cell that holds a list parted by bars. */
    public List<String> list(String column) {
        String text = text(column);
        return text.isEmpty() ? List.of() : List.of(text.split("\\s*\\|\\s*"));
    }
}
