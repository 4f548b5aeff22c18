package rootcast.app.ledger.csv;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.app.table.TextTable;
import rootcast.crop.Stage;
import rootcast.ledger.EntryRules;

/**
 * One line of the table: names as they stand there, figures and days read.
 *
 * @param stage     reached; null for none that is said
 * @param reachedOn null where the line does not say
 * @param alive     plants; null where nobody counted
 */
record BatchLine(
        long number,
        String site,
        String house,
        String crop,
        String variety,
        String trayFormat,
        int trays,
        LocalDate stuckOn,
        @Nullable Stage stage,
        @Nullable LocalDate reachedOn,
        @Nullable Integer alive,
        String lot) {

    /** 1 656, 1,656 and 1.656 are the same count: none of these is ever a part of a plant. */
    private static final Pattern GROUPED = Pattern.compile("\\d{1,3}([ .,'\u00a0\u202f]\\d{3})+|\\d{1,9}");

    private static final Pattern BETWEEN_GROUPS = Pattern.compile("\\D");

    /** @throws LineRefused if it cannot be read */
    static BatchLine read(TextTable.Line line, BatchCsvPlan plan) {
        BatchCsvPlan.Columns columns = plan.columns();
        if (!line.isWhole()) {
            throw new LineRefused(
                    null, "cells", null, "has %d cells, the header has another number".formatted(line.size()));
        }
        String stage = cell(line, columns.stage());
        String reachedOn = cell(line, columns.reachedOn());
        String alive = cell(line, columns.alive());
        return new BatchLine(
                line.number(),
                orUsual(cell(line, columns.site()), plan.site()),
                orUsual(cell(line, columns.house()), plan.house()),
                cell(line, columns.crop()),
                needed(line, columns.variety()),
                needed(line, columns.trayFormat()),
                trays(line, columns.trays()),
                day(needed(line, columns.stuckOn()), columns.stuckOn(), plan),
                stage.isEmpty() ? null : stage(stage, columns.stage(), plan),
                reachedOn.isEmpty() ? null : day(reachedOn, columns.reachedOn(), plan),
                alive.isEmpty() ? null : whole(alive, columns.alive()),
                cell(line, columns.lot()));
    }

    private static String cell(TextTable.Line line, @Nullable String column) {
        return column == null ? "" : line.cell(column);
    }

    private static String orUsual(String said, @Nullable String usual) {
        return said.isEmpty() && usual != null ? usual : said;
    }

    private static String needed(TextTable.Line line, String column) {
        String said = line.cell(column);
        if (said.isEmpty()) {
            throw LineRefused.missing(column);
        }
        return said;
    }

    private static int trays(TextTable.Line line, String column) {
        int trays = whole(needed(line, column), column);
        if (trays < 1 || trays > EntryRules.MOST_TRAYS) {
            throw new LineRefused(
                    column,
                    "trays",
                    String.valueOf(trays),
                    "%d must lie between 1 and %d".formatted(trays, EntryRules.MOST_TRAYS));
        }
        return trays;
    }

    private static int whole(String said, @Nullable String column) {
        if (!GROUPED.matcher(said).matches()) {
            throw new LineRefused(column, "not-whole", said, "'%s' is no whole number".formatted(said));
        }
        try {
            return Integer.parseInt(BETWEEN_GROUPS.matcher(said).replaceAll(""));
        } catch (NumberFormatException tooLarge) {
            throw new LineRefused(column, "not-whole", said, "'%s' is too large".formatted(said));
        }
    }

    private static LocalDate day(String said, @Nullable String column, BatchCsvPlan plan) {
        try {
            return LocalDate.parse(said, plan.dates());
        } catch (DateTimeException notADay) {
            throw new LineRefused(
                    column, "not-a-day", said, "'%s' is no day of the form that was given".formatted(said));
        }
    }

    private static @Nullable Stage stage(String said, @Nullable String column, BatchCsvPlan plan) {
        if (!plan.stages().containsKey(said)) {
            throw new LineRefused(column, "not-a-stage", said, "'%s' is no stage that was explained".formatted(said));
        }
        Stage stage = plan.stages().get(said);
        return stage == Stage.STICK ? null : stage;
    }
}
