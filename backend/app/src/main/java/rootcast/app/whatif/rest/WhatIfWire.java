package rootcast.app.whatif.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.rest.DateRangeWire;
import rootcast.app.outlook.rest.TraysWire;
import rootcast.app.whatif.Answer;
import rootcast.app.whatif.MovedPromise;

/** The question and the answer as they are sent. */
public final class WhatIfWire {

    private WhatIfWire() {}

    record Asked(
            @Nullable @Size(max = 500) List<@NotNull @Valid SetpointAsked> setpoints,
            @Nullable @Size(max = 500) List<@NotNull @Valid MoveAsked> moves) {}

    /**
     * @param mediumC °C, 0 to 40
     * @param from    an instant, or a date: its beginning at the house's site
     */
    record SetpointAsked(
            @NotBlank String house,
            @NotNull @DecimalMin("0") @DecimalMax("40") Double mediumC,
            @NotBlank String from) {}

    record MoveAsked(
            @NotBlank String batch,
            @NotBlank String house,
            @NotBlank String from) {}

    public record Answered(
            Instant asOf,
            long position,
            double confidence,
            List<BatchMoved> batches,
            List<CellMoved> cells,
            List<PromiseMoved> promises) {}

    public record BatchMoved(String id, BatchOtherwise before, BatchOtherwise after) {}

    public record BatchOtherwise(
            String house,
            DateRangeWire readyAt,
            TraysWire saleableTrays,
            @Nullable LocalDate usableUntil) {

        static BatchOtherwise of(BatchSnapshot snapshot, String house) {
            var outlook = snapshot.outlook();
            if (outlook == null) {
                throw new IllegalStateException(snapshot.batch().id() + " has no plant left");
            }
            return new BatchOtherwise(
                    house,
                    DateRangeWire.of(outlook.readyAt()),
                    TraysWire.of(outlook.saleableTrays()),
                    snapshot.usableUntil());
        }
    }

    /**
     * Open trays of one week of one row.
     *
     * @param date the day they stand for, as on the board: the site's ship day, or today once that is past
     */
    public record CellMoved(
            String variety,
            String trayFormat,
            String site,
            String week,
            LocalDate date,
            int openBefore,
            int openAfter) {}

    /**
     * A promise that would fare otherwise.
     *
     * @param trays       still to ship
     * @param shortBefore of them cannot be kept as things stand
     * @param shortAfter  and as they would stand
     */
    public record PromiseMoved(
            long orderNumber,
            int line,
            String customer,
            String variety,
            String trayFormat,
            String site,
            LocalDate shipOn,
            int trays,
            int shortBefore,
            int shortAfter) {

        static PromiseMoved of(MovedPromise moved) {
            return new PromiseMoved(
                    moved.order().number(),
                    moved.promise().line(),
                    moved.order().customer(),
                    moved.cell().variety(),
                    moved.cell().trayFormat(),
                    moved.cell().site(),
                    moved.promise().shipOn(),
                    moved.promise().trays(),
                    moved.shortBefore(),
                    moved.shortAfter());
        }
    }

    public static Answered of(Answer answer, double confidence) {
        return new Answered(
                answer.asOf(),
                answer.position().value(),
                confidence,
                answer.batches().stream()
                        .map(moved -> new BatchMoved(
                                moved.before().batch().id(),
                                BatchOtherwise.of(
                                        moved.before(), moved.before().state().house()),
                                BatchOtherwise.of(moved.after(), moved.houseAfter())))
                        .toList(),
                answer.cells().stream()
                        .map(moved -> new CellMoved(
                                moved.cell().variety(),
                                moved.cell().trayFormat(),
                                moved.cell().site(),
                                moved.week().toString(),
                                moved.date(),
                                moved.openBefore(),
                                moved.openAfter()))
                        .toList(),
                answer.promises().stream().map(PromiseMoved::of).toList());
    }
}
