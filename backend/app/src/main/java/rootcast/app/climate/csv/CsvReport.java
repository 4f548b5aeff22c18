package rootcast.app.climate.csv;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/**
 * What was, or would be, made of a table.
 *
 * @param dryRun    whether nothing was written
 * @param readings  cells with a number
 * @param refused   cells or rows that are not taken, those set aside among them
 * @param flagged   flags that the readings raised in the series
 * @param spans     from when to when the numbers are, by site: whoever looks sees how the times were read
 * @param lines     the first of what there is to say, by line; mere notes give way to the rest
 * @param moreLines whether there is more
 */
public record CsvReport(
        boolean dryRun,
        int rows,
        int readings,
        int accepted,
        int duplicates,
        int refused,
        int flagged,
        List<Span> spans,
        List<Line> lines,
        boolean moreLines) {

    /**
     * @param timeZone of the clock that local times were read by
     * @param first    inclusive, as is {@code last}
     */
    @Schema(name = "CsvSpan")
    public record Span(String site, String timeZone, Instant first, Instant last) {}

    /**
     * @param outcome refused, set-aside, flagged or noted
     * @param kind    of the flag, or what is noted
     */
    @Schema(name = "CsvLine")
    public record Line(
            long line,
            @Nullable String column,
            String outcome,
            @Nullable String kind,
            Saying why) {}
}
