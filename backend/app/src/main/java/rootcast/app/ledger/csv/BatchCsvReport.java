package rootcast.app.ledger.csv;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;

/**
 * What was, or would be, made of a table of batches.
 *
 * @param dryRun   whether nothing was written
 * @param batches  stuck with it
 * @param plants   alive in these
 * @param here     lines that say of a batch what is recorded already
 * @param refused  lines that are not taken
 * @param doubtful lines that are taken and hardly likely
 * @param made     houses and varieties that were made for it
 * @param lines    everything there is to say, by line
 */
public record BatchCsvReport(
        boolean dryRun,
        int rows,
        int batches,
        int plants,
        int here,
        int refused,
        int doubtful,
        List<Made> made,
        List<Line> lines) {

    /** @param kind house or variety */
    @Schema(name = "BatchCsvMade")
    public record Made(String kind, String code, String name) {}

    /**
     * @param outcome refused, here, doubtful or noted
     * @param kind    of the reason, for programs: the last part of a problem's type, or one of this import
     * @param asked   what the line says, where the reason is about one value
     * @param booked  plants that the line's own figures would leave, of a doubt
     * @param expectedAt when a doubted stage is expected
     */
    @Schema(name = "BatchCsvLine")
    public record Line(
            long line,
            @Nullable String column,
            String outcome,
            String kind,
            String reason,
            @Nullable String asked,
            @Nullable Long booked,
            @Nullable Long least,
            @Nullable Long most,
            @Nullable Instant expectedAt) {

        static Line of(LineRefused refused, long line) {
            return new Line(
                    line,
                    refused.column(),
                    "refused",
                    refused.kind(),
                    refused.getMessage(),
                    refused.asked(),
                    null,
                    null,
                    null,
                    null);
        }

        static Line said(long line, @Nullable String column, String outcome, String kind, String reason) {
            return new Line(line, column, outcome, kind, reason, null, null, null, null, null);
        }

        /** What a problem says, with its numbers. */
        static Line of(Problem problem, long line, String outcome) {
            Object asked = problem.member("asked");
            return new Line(
                    line,
                    null,
                    outcome,
                    problem.code(),
                    problem.getMessage(),
                    asked == null ? null : asked.toString(),
                    whole(problem.member("booked")),
                    whole(problem.member("least")),
                    whole(problem.member("most")),
                    problem.member("expected") instanceof Instant expected ? expected : null);
        }

        private static @Nullable Long whole(@Nullable Object value) {
            return value instanceof Number number ? number.longValue() : null;
        }
    }
}
