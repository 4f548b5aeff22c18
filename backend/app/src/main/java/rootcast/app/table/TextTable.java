package rootcast.app.table;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/** A table as RFC 4180 writes one, under a line of column names; cells are trimmed and empty lines are none. */
public final class TextTable {

    private TextTable() {}

    /** One line below the names. */
    public static final class Line {
        private final CSVRecord cells;
        private final long number;

        private Line(CSVRecord cells, long number) {
            this.cells = cells;
            this.number = number;
        }

        /** As a reader counts: the names stand on line 1. */
        public long number() {
            return number;
        }

        public int size() {
            return cells.size();
        }

        /** Whether it has as many cells as there are names. */
        public boolean isWhole() {
            return cells.isConsistent();
        }

        public String cell(String column) {
            return cells.get(column);
        }
    }

    /**
     * @param text   with or without the mark of the byte order
     * @param wanted names that the table must have
     * @param taking takes one line after the other
     */
    public static void read(String text, char separator, Collection<String> wanted, Consumer<Line> taking) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text.startsWith("\uFEFF") ? text.substring(1) : text))
                .setFormat(format)
                .get()) {
            checkHeader(parser.getHeaderNames(), wanted);
            for (CSVRecord row : parser) {
                taking.accept(new Line(row, parser.getCurrentLineNumber()));
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException | IllegalStateException broken) {
            throw Problem.malformed("csv", Fault.NOT_A_TABLE);
        }
    }

    private static void checkHeader(List<String> header, Collection<String> wanted) {
        for (String name : wanted) {
            if (!header.contains(name)) {
                throw Problem.malformed("columns", Fault.NOT_IN_HEADER, name, header);
            }
        }
    }
}
