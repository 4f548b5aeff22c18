package rootcast.outlook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Numbers that a script of R printed; script, command and version stand beside the table. */
public record RTable(List<String[]> rows) {

    /** @param resource below {@code rootcast} */
    public static RTable of(String resource) {
        try (InputStream in = RTable.class.getResourceAsStream("/rootcast/" + resource)) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            return new RTable(text.lines().skip(1).map(line -> line.split(";")).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The numbers of the row that begins so. */
    public double[] row(String... names) {
        String[] row = rows.stream()
                .filter(each -> Arrays.equals(each, 0, names.length, names, 0, names.length))
                .findFirst()
                .orElseThrow();
        return Arrays.stream(row, names.length, row.length)
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
