package rootcast.app.board.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.LivePromises;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.rest.LotShareWire;
import rootcast.app.board.LiveBoard;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
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
@ApplicationScoped
class CellWires {

    @Inject
    LiveBatches batches;

    @Inject
    LivePromises promises;

    @Inject
    LiveSupply supply;

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
            List<LotWire> lots,
            List<PromiseWire> promises,
            @Nullable LimitWire limitedBy,
            Steps steps) {}

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
            LocalDate usableUntil,
            int traysAtConfidence,
            int promisedHere) {}

    record PromiseWire(
            String order,
            int line,
            String customer,
            LocalDate shipOn,
            int trays,
            int shipped,
            double confidence,
            boolean kept,
            int shortTrays,
            boolean inWeek,
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

    CellExplained explained(CellExplanation explanation, LiveBoard board) {
        var head = explanation.head();
        Cell cell = head.cell();
        BoardCell figures = explanation.cell();
        List<BatchPicture> pictures = batches.of(cell).stream()
                .filter(picture -> !picture.standing().isFinished())
                .toList();
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
                board.asOf(),
                board.position().value(),
                figures.ready(),
                figures.promised(),
                figures.open(),
                figures.likely(),
                figures.atRisk(),
                explanation.lots().stream().map(this::lot).toList(),
                explanation.promises().stream()
                        .map(figure -> promise(figure, cell))
                        .toList(),
                limit(explanation.limitedBy()),
                steps(pictures, figures));
    }

    private LotWire lot(CellExplanation.LotFigure figure) {
        BatchPicture picture = batches.picture(figure.batch()).orElseThrow();
        Outlook outlook = picture.outlook();
        return new LotWire(
                figure.batch(),
                picture.standing().house(),
                picture.standing().stage(),
                picture.standing().alivePlants(),
                TraysWire.of(outlook.saleableTrays()),
                DateRangeWire.of(outlook.readyAt()),
                figure.readyByDate(),
                figure.usableFrom(),
                figure.usableUntilInclusive(),
                figure.traysAtConfidence(),
                figure.promisedInWeek());
    }

    private PromiseWire promise(CellExplanation.PromiseFigure figure, Cell cell) {
        var kept = figure.promise();
        Promise promise = kept.promise();
        UUID order = UUID.fromString(promise.order());
        return new PromiseWire(
                promise.order(),
                promise.line(),
                promises.order(order).map(each -> each.customer()).orElse(""),
                promise.shipOn(),
                promise.trays(),
                supply.shippedFor(new OrderLine(order, promise.line()), cell),
                promise.confidence(),
                kept.kept(),
                kept.shortfallTrays(),
                figure.inWeek(),
                kept.shares().stream().map(LotShareWire::of).toList());
    }

    private static @Nullable LimitWire limit(@Nullable Limit limit) {
        return limit == null
                ? null
                : new LimitWire(limit.dates(), limit.capacity(), limit.promised(), limit.confidence());
    }

    private static Steps steps(List<BatchPicture> pictures, BoardCell figures) {
        int stuck = 0;
        int lost = 0;
        int alive = 0;
        int shipped = 0;
        double expected = 0;
        int saleable = 0;
        for (BatchPicture picture : pictures) {
            var standing = picture.standing();
            stuck += standing.stuckPlants();
            lost += standing.lostPlants();
            alive += standing.alivePlants();
            shipped += standing.shippedPlants();
            expected += picture.outlook().expectedAlive();
            saleable += picture.outlook().saleableTrays().p50();
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
