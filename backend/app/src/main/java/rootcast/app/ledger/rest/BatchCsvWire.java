package rootcast.app.ledger.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.csv.BatchCsvPlan;
import rootcast.app.problem.Problem;
import rootcast.crop.Stage;
import rootcast.saying.Fault;

/**
 * A table of batches and how it is to be read.
 *
 * @param separator   comma unless given
 * @param dateFormat  pattern of its days; without one ISO 8601
 * @param stages      which stage a word of the stage column means; STICK for a batch that has only been stuck
 * @param site        of lines that name none; the same for the house
 * @param makeMissing whether houses and varieties that nobody knows are made; no unless said
 */
record BatchCsvWire(
        @NotNull String csv,
        @Nullable @Size(min = 1, max = 1) String separator,
        @Nullable @Size(max = 60) String dateFormat,
        @NotNull @Valid ColumnsWire columns,
        @Nullable Map<@NotNull String, @NotNull Stage> stages,
        @Nullable @Size(max = 120) String site,
        @Nullable @Size(max = 120) String house,
        @Nullable Boolean makeMissing) {

    /** Names of columns. */
    record ColumnsWire(
            @Nullable String site,
            @Nullable String house,
            @Nullable String crop,
            @NotNull String variety,
            @NotNull String trayFormat,
            @NotNull String trays,
            @NotNull String stuckOn,
            @Nullable String stage,
            @Nullable String reachedOn,
            @Nullable String alive,
            @Nullable String lot) {

        BatchCsvPlan.Columns columns() {
            return new BatchCsvPlan.Columns(
                    site, house, crop, variety, trayFormat, trays, stuckOn, stage, reachedOn, alive, lot);
        }
    }

    BatchCsvPlan plan() {
        char parting = separator == null ? ',' : separator.charAt(0);
        if (parting == '"' || parting == '\n' || parting == '\r') {
            throw Problem.malformed("separator", Fault.SAME_AS_DECIMAL_SIGN);
        }
        Map<String, Stage> meant = new LinkedHashMap<>(stages == null ? Map.of() : stages);
        if (meant.containsValue(Stage.SHIP)) {
            throw Problem.malformed(
                    "stages", Fault.ONE_OF, List.of(Stage.STICK, Stage.CALLUS, Stage.ROOT, Stage.READY));
        }
        return new BatchCsvPlan(
                parting, days(), columns.columns(), meant, site, house, Boolean.TRUE.equals(makeMissing));
    }

    /** Strict, so that 31 June is no day instead of the last one of June. */
    private DateTimeFormatter days() {
        try {
            return dateFormat == null
                    ? DateTimeFormatter.ISO_LOCAL_DATE
                    : DateTimeFormatter.ofPattern(dateFormat.replace('y', 'u'), Locale.ROOT)
                            .withResolverStyle(ResolverStyle.STRICT);
        } catch (IllegalArgumentException broken) {
            throw Problem.malformed("dateFormat", Fault.NOT_A_TIME_FORMAT);
        }
    }
}
