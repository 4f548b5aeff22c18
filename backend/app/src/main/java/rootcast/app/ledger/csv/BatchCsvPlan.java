package rootcast.app.ledger.csv;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;

/**
 * How a table of batches is to be read.
 *
 * @param dates       the form of its days
 * @param columns     which column says what
 * @param stages      what a word of the stage column means; null for a batch that is only stuck
 * @param site        of lines that name none; the same for the house
 * @param makeMissing whether houses and varieties that a line names and nobody knows are made
 */
public record BatchCsvPlan(
        char separator,
        DateTimeFormatter dates,
        Columns columns,
        Map<String, Stage> stages,
        @Nullable String site,
        @Nullable String house,
        boolean makeMissing) {

    /** Names of columns; of what may be left out, null. */
    public record Columns(
            @Nullable String site,
            @Nullable String house,
            @Nullable String crop,
            String variety,
            String trayFormat,
            String trays,
            String stuckOn,
            @Nullable String stage,
            @Nullable String reachedOn,
            @Nullable String alive,
            @Nullable String lot) {

        List<String> named() {
            return Stream.of(site, house, crop, variety, trayFormat, trays, stuckOn, stage, reachedOn, alive, lot)
                    .filter(Objects::nonNull)
                    .toList();
        }
    }
}
