package rootcast.app.crop;

import java.util.ArrayList;
import java.util.List;

/**
 * A small table of the seed folder: a header line, then one line a row, fields parted by commas. Plain on purpose: no
 * quotes, so no field may hold a comma.
 */
public record SeedTable(String name, List<Row> rows) {

    /** @param line counted from 1 */
    public record Row(String table, int line, List<String> header, List<String> fields) {

        public String text(String column) {
            int index = header.indexOf(column);
            if (index < 0) {
                throw new IllegalArgumentException("%s has no column %s".formatted(table, column));
            }
            return fields.get(index);
        }

        public int number(String column) {
            return Integer.parseInt(text(column));
        }

        public double decimal(String column) {
            return Double.parseDouble(text(column));
        }
    }

    public static SeedTable parse(String name, List<String> lines) {
        List<String> header = List.of(lines.get(0).split(",", -1));
        List<Row> rows = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            String line = lines.get(i);
            List<String> fields = List.of(line.split(",", -1));
            if (fields.size() != header.size() || line.contains("\"")) {
                throw new IllegalArgumentException("%s line %d: %d fields without quotes expected, found '%s'"
                        .formatted(name, i + 1, header.size(), line));
            }
            rows.add(new Row(name, i + 1, header, fields));
        }
        return new SeedTable(name, rows);
    }
}
