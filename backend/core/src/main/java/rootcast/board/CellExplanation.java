package rootcast.board;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.availability.Allotment;
import rootcast.availability.CellSupply;
import rootcast.availability.KeptPromise;
import rootcast.availability.KeptTogether;
import rootcast.availability.Limit;
import rootcast.availability.OpenTrays;
import rootcast.availability.Promise;
import rootcast.availability.Share;
import rootcast.availability.SupplyLot;
import rootcast.site.ShipWeek;

/**
 * One cell of the board opened: the lots and promises that make its figures.
 *
 * @param cell       the figures, the same as on the board
 * @param lots       every lot of the row, the first to end first, those that offer nothing last; none for a past week
 * @param promises   every promise of the row by ship date, with what stands behind it
 * @param limitedBy  the ship dates whose slack is the open figure; null for a past week
 * @param weekKept   chance that all promises of the week are kept in full; null if there is none
 * @param allKept    chance that all promises of the row are; null if there is none
 */
public record CellExplanation(
        RowHead head,
        BoardCell cell,
        double confidence,
        List<LotFigure> lots,
        List<PromiseFigure> promises,
        @Nullable Limit limitedBy,
        @Nullable Double weekKept,
        @Nullable Double allKept) {

    /**
     * @param readyByDate        probability that nine cells in ten are through by the cell's date
     * @param usableFrom         first date from today on which it offers a tray at the confidence; null if none
     * @param usableUntilInclusive last date on which it offers a tray at the confidence; null if none
     * @param traysAtConfidence  trays it offers on the cell's date
     * @param promisedInWeek     its trays that serve promises of the cell's week
     * @param promisedInAll      its trays that serve promises of any week
     */
    public record LotFigure(
            String batch,
            double readyByDate,
            @Nullable LocalDate usableFrom,
            @Nullable LocalDate usableUntilInclusive,
            int traysAtConfidence,
            int promisedInWeek,
            int promisedInAll) {}

    /**
     * @param chance  that it is kept in full, whatever confidence it was made at
     * @param inWeek  whether it is part of the cell's promised figure
     * @param inLimit whether it counts in {@code limitedBy}
     */
    public record PromiseFigure(KeptPromise promise, double chance, boolean inWeek, boolean inLimit) {}

    public CellExplanation {
        lots = List.copyOf(lots);
        promises = List.copyOf(promises);
    }

    public static CellExplanation of(
            RowHead head, CellSupply supply, ShipWeek week, double confidence, DayOfWeek shipDay) {
        LocalDate today = supply.today();
        BoardCell cell = new BoardModel(List.of(week), confidence, shipDay, today)
                .row(head, supply)
                .cells()
                .get(0);
        Allotment allotment = Allotment.of(supply);
        KeptTogether together = KeptTogether.of(supply, head.crop());
        boolean isPast = BoardModel.isPast(week, today);
        Limit limit = isPast
                ? null
                : OpenTrays.of(supply, List.of(cell.date())).at(confidence).limit(cell.date());
        List<LotFigure> lots = new ArrayList<>();
        if (!isPast) {
            supply.lots().forEach(lot -> lots.add(figureOf(lot, cell, confidence, today, allotment)));
        }
        lots.sort(Comparator.comparing(LotFigure::usableUntilInclusive, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(LotFigure::batch));
        return new CellExplanation(
                head,
                cell,
                confidence,
                lots,
                promises(allotment, together, week, today, limit),
                limit,
                together.chanceOfAll(supply.promises().stream()
                        .filter(promise -> BoardModel.isIn(week, promise.shipOn()))
                        .toList()),
                together.chanceOfAll(supply.promises()));
    }

    private static List<PromiseFigure> promises(
            Allotment allotment, KeptTogether together, ShipWeek week, LocalDate today, @Nullable Limit limit) {
        List<PromiseFigure> figures = new ArrayList<>();
        for (KeptPromise each : allotment.promises()) {
            Promise promise = each.promise();
            boolean inLimit = limit != null
                    && promise.confidence() >= limit.confidence()
                    && limit.dates().contains(promise.dueOn(today));
            figures.add(new PromiseFigure(
                    each, together.chance(promise), BoardModel.isIn(week, promise.shipOn()), inLimit));
        }
        figures.sort(Comparator.comparing(
                        (PromiseFigure each) -> each.promise().promise().shipOn())
                .thenComparing(each -> each.promise().promise().position()));
        return figures;
    }

    private static LotFigure figureOf(
            SupplyLot lot, BoardCell cell, double confidence, LocalDate today, Allotment allotment) {
        int inWeek = 0;
        int inAll = 0;
        for (KeptPromise each : allotment.promises()) {
            for (Share share : each.shares()) {
                if (share.batch().equals(lot.batch())) {
                    inAll += share.trays();
                    inWeek += BoardModel.isIn(cell.week(), each.promise().shipOn()) ? share.trays() : 0;
                }
            }
        }
        return new LotFigure(
                lot.batch(),
                lot.readyBy(cell.date()),
                lot.usableFrom(today, confidence),
                lot.usableUntilInclusive(confidence),
                lot.traysAt(cell.date(), confidence),
                inWeek,
                inAll);
    }
}
