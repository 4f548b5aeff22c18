package rootcast.app.board.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.Order;
import rootcast.app.availability.rest.LotShareWire;
import rootcast.app.board.CellFacts;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.rest.DateRangeWire;
import rootcast.app.outlook.rest.TraysWire;
import rootcast.availability.Cell;
import rootcast.availability.Limit;
import rootcast.availability.Promise;
import rootcast.board.BoardCell;
import rootcast.board.CellExplanation;
import rootcast.crop.Stage;
import rootcast.ledger.OrderLine;
import rootcast.outlook.Outlook;

/** A board cell opened: what its figures are made of. */
final class CellWires {

    private CellWires() {}

    /**
     * @param weekKept chance that all promises of the week are kept in full; null if there is none
     * @param allKept  chance that all promises of the row are kept in full; null if there is none
     */
    record CellExplained(
            String variety,
            String varietyName,
            String crop,
            String cropName,
            String trayFormat,
            String site,
            String week,
            LocalDate date,
            double confidence,
            Instant asOf,
            long position,
            int ready,
            int promised,
            int open,
            int likely,
            int atRisk,
            int lessSure,
            List<LotWire> lots,
            List<PromiseWire> promises,
            @Nullable LimitWire limitedBy,
            @Nullable Double weekKept,
            @Nullable Double allKept,
            Steps steps,
            List<BoardWire.FaultyWire> faulty) {}

    /** @param promisedHere its trays that serve promises of this week */
    record LotWire(
            String batch,
            String house,
            Stage stage,
            int alive,
            TraysWire saleableTrays,
            DateRangeWire readyAt,
            double readyByDateProbability,
            @Nullable LocalDate usableFrom,
            @Nullable LocalDate usableUntil,
            int traysAtConfidence,
            int promisedHere) {}

    /**
     * @param chance  that it is kept in full
     * @param inLimit whether it counts in {@code limitedBy}
     */
    record PromiseWire(
            String order,
            long orderNumber,
            int line,
            String customer,
            LocalDate shipOn,
            int trays,
            int shipped,
            double confidence,
            double chance,
            boolean kept,
            int shortTrays,
            boolean inWeek,
            boolean inLimit,
            List<LotShareWire> lots) {}

    /** @param confidence at which capacity is counted; lower than asked where a less certain promise is what limits */
    record LimitWire(List<LocalDate> dates, int capacity, int promised, double confidence) {}

    /** From sticking to open: plants up to {@code expectedAlive}, trays from {@code saleable} on. */
    record Steps(
            int stuck,
            int lost,
            int alive,
            int shipped,
            long expectedAlive,
            int saleable,
            int ready,
            int promised,
            int open) {}

    static CellExplained explained(CellExplanation explanation, CellFacts facts) {
        var head = explanation.head();
        Cell cell = facts.cell().cell();
        BoardCell figures = explanation.cell();
        return new CellExplained(
                cell.variety(),
                head.varietyName(),
                head.crop(),
                head.cropName(),
                cell.trayFormat(),
                cell.site(),
                figures.week().toString(),
                figures.date(),
                explanation.confidence(),
                facts.asOf(),
                facts.position().value(),
                figures.ready(),
                figures.promised(),
                figures.open(),
                figures.likely(),
                figures.atRisk(),
                figures.lessSure(),
                explanation.lots().stream().map(figure -> lot(figure, facts)).toList(),
                explanation.promises().stream()
                        .map(figure -> promise(figure, facts))
                        .toList(),
                limit(explanation.limitedBy()),
                explanation.weekKept(),
                explanation.allKept(),
                steps(facts.cell().batches(), figures),
                facts.cell().faulty().stream().map(BoardWire.FaultyWire::of).toList());
    }

    private static LotWire lot(CellExplanation.LotFigure figure, CellFacts facts) {
        BatchSnapshot snapshot = facts.cell().batches().stream()
                .filter(each -> each.batch().id().equals(figure.batch()))
                .findFirst()
                .orElseThrow();
        Outlook outlook = snapshot.outlook();
        return new LotWire(
                figure.batch(),
                snapshot.state().house(),
                snapshot.state().stage(),
                snapshot.state().alivePlants(),
                TraysWire.of(outlook.saleableTrays()),
                DateRangeWire.of(outlook.readyAt()),
                figure.readyByDate(),
                figure.usableFrom(),
                figure.usableUntilInclusive(),
                figure.traysAtConfidence(),
                figure.promisedInWeek());
    }

    private static PromiseWire promise(CellExplanation.PromiseFigure figure, CellFacts facts) {
        var kept = figure.promise();
        Promise promise = kept.promise();
        UUID order = UUID.fromString(promise.order());
        Order placed = facts.promises().order(order).orElseThrow();
        return new PromiseWire(
                promise.order(),
                placed.number(),
                promise.line(),
                placed.customer(),
                promise.shipOn(),
                promise.trays(),
                facts.promises().shippedFor(new OrderLine(order, promise.line())),
                promise.confidence(),
                figure.chance(),
                kept.kept(),
                kept.shortfallTrays(),
                figure.inWeek(),
                figure.inLimit(),
                kept.shares().stream().map(LotShareWire::of).toList());
    }

    private static @Nullable LimitWire limit(@Nullable Limit limit) {
        return limit == null
                ? null
                : new LimitWire(limit.dates(), limit.capacity(), limit.promised(), limit.confidence());
    }

    private static Steps steps(List<BatchSnapshot> snapshots, BoardCell figures) {
        int stuck = 0;
        int lost = 0;
        int alive = 0;
        int shipped = 0;
        double expected = 0;
        int saleable = 0;
        for (BatchSnapshot snapshot : snapshots) {
            var state = snapshot.state();
            stuck += state.stuckPlants();
            lost += state.lostPlants();
            alive += state.alivePlants();
            shipped += state.shippedPlants();
            expected += snapshot.outlook().expectedAlive();
            saleable += snapshot.outlook().saleableTrays().p50();
        }
        return new Steps(
                stuck,
                lost,
                alive,
                shipped,
                Math.round(expected),
                saleable,
                figures.ready(),
                figures.promised(),
                figures.open());
    }
}
