package rootcast.app.outlook.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.climate.HourSource;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.outlook.Outlook;

/**
 * A batch as it stands and as it is expected.
 *
 * @param trays       still on the bench
 * @param lostByCause plants; only a count difference may be negative
 * @param outlook     null once no plant is left
 */
public record BatchView(
        String id,
        String site,
        String house,
        String variety,
        String varietyName,
        String crop,
        String cropName,
        String trayFormat,
        Instant stuckAt,
        Stage stage,
        Instant stageSince,
        int trays,
        int traysStuck,
        Plants plants,
        Map<String, Integer> lostByCause,
        @Nullable CountView lastCount,
        @Nullable OutlookView outlook,
        long position) {

    public record Plants(int stuck, int alive, int lost, int shipped) {}

    /** @param sampledCells null if every plant was counted */
    public record CountView(Instant at, int alive, @Nullable Integer sampledCells) {}

    public record ExpectedMove(String house, Instant at) {}

    /**
     * @param expectedAlive plants expected alive now, losses that nobody has recorded taken off
     * @param usableUntil   last day at its site on which it offers a tray at a confidence of 0.9; null if it offers none
     * @param missingHours  hours since sticking without a reading in its house
     * @param filledFrom    the least trusted thing that stood in for them; null if none was missing
     * @param forecastFrom  what the hours to come are taken from
     * @param moves         where it is expected to be carried, as batches of its house usually are, and when
     */
    public record OutlookView(
            Instant asOf,
            DateRangeWire callusedAt,
            DateRangeWire rootedAt,
            DateRangeWire readyAt,
            TraysWire saleableTrays,
            long expectedAlive,
            @Nullable LocalDate usableUntil,
            int missingHours,
            @Nullable String filledFrom,
            String forecastFrom,
            List<ExpectedMove> moves) {

        static OutlookView of(Outlook outlook, @Nullable LocalDate usableUntil) {
            return new OutlookView(
                    outlook.asOf(),
                    DateRangeWire.of(outlook.callusedAt()),
                    DateRangeWire.of(outlook.rootedAt()),
                    DateRangeWire.of(outlook.readyAt()),
                    TraysWire.of(outlook.saleableTrays()),
                    Math.round(outlook.expectedAlive()),
                    usableUntil,
                    outlook.missingHours(),
                    outlook.filledFrom().stream()
                            .max(HourSource::compareTo)
                            .map(OutlookView::words)
                            .orElse(null),
                    words(outlook.forecastFrom()),
                    outlook.moves().stream()
                            .map(move -> new ExpectedMove(move.house(), move.fromInclusive()))
                            .toList());
        }

        private static String words(HourSource source) {
            return switch (source) {
                case MEASURED -> "readings";
                case NEIGHBOURS, SAME_HOUR, PATTERN -> "house pattern";
                case SETPOINT -> "set-point";
                case REFERENCE -> "reference temperature";
            };
        }
    }

    static BatchView of(BatchSnapshot snapshot, LiveCatalogue names) {
        var batch = snapshot.batch();
        BatchState state = snapshot.state();
        var crop = names.cropOf(batch.variety());
        Map<String, Integer> lost = new TreeMap<>();
        state.lost().forEach((cause, plants) -> lost.put(cause.wire(), plants));
        return new BatchView(
                batch.id(),
                batch.site(),
                state.house(),
                batch.variety(),
                names.variety(batch.variety()).name(),
                crop.code(),
                crop.name(),
                batch.trayFormat().code(),
                batch.stuckAt(),
                state.stage(),
                since(state),
                state.benchTrays(),
                state.stuckTrays(),
                new Plants(state.stuckPlants(), state.alivePlants(), state.lostPlants(), state.shippedPlants()),
                lost,
                lastCount(state),
                snapshot.outlook() == null ? null : OutlookView.of(snapshot.outlook(), snapshot.usableUntil()),
                snapshot.position().value());
    }

    private static Instant since(BatchState state) {
        return state.reachedAt().values().stream()
                .max(Instant::compareTo)
                .orElse(state.batch().stuckAt());
    }

    private static @Nullable CountView lastCount(BatchState state) {
        var sampled = state.sampledCount();
        if (sampled != null) {
            return new CountView(
                    sampled.at(), sampled.alivePlants(), sampled.sample().cells());
        }
        var full = state.fullCount();
        return full == null ? null : new CountView(full.at(), full.plants(), null);
    }
}
