package rootcast.app.availability.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.Order;
import rootcast.app.availability.PlaceOrder;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.availability.Cell;
import rootcast.availability.Confidence;
import rootcast.availability.KeptPromise;
import rootcast.availability.WantedLine;
import rootcast.saying.Fault;

/** An order as it is sent. */
record OrderWire(
        @NotBlank @Size(max = 200) String customer,
        @Nullable @Size(max = 2000) String note,
        @Nullable Double confidence,
        @NotNull @Size(min = 1, max = 200) List<@NotNull @Valid LineWire> lines) {

    record LineWire(
            @Code String variety,
            @Code String trayFormat,
            @Code String site,
            @NotNull LocalDate shipOn,
            @NotNull @Min(1) Integer trays) {}

    PlaceOrder.Wanted wanted(UUID id) {
        double sure = confidence == null ? Confidence.USUAL : confidence;
        if (!(sure >= 0.01 && sure <= 0.999)) {
            throw Problem.notAllowed("confidence", sure, Fault.BETWEEN, 0.01, 0.999);
        }
        List<WantedLine> wanted = new ArrayList<>(lines.size());
        for (LineWire line : lines) {
            Cell cell = new Cell(line.variety(), line.trayFormat(), line.site());
            wanted.add(new WantedLine(wanted.size() + 1, cell, line.shipOn(), line.trays()));
        }
        return new PlaceOrder.Wanted(id, customer.strip(), note, sure, wanted);
    }

    /**
     * @param number   what people call it
     * @param promises while the order stands, one per line
     */
    record OrderView(
            UUID id,
            long number,
            String customer,
            @Nullable String note,
            Instant recordedAt,
            String recordedBy,
            double confidence,
            boolean released,
            @Nullable String releasedBy,
            long position,
            List<PromiseView> promises) {

        static OrderView of(Order order, List<PromiseView> promises) {
            return new OrderView(
                    order.id(),
                    order.number(),
                    order.customer(),
                    order.note(),
                    order.recordedAt(),
                    order.recordedBy(),
                    order.confidence(),
                    order.isReleased(),
                    order.releasedBy(),
                    order.position().value(),
                    promises);
        }
    }

    /**
     * @param trays promised
     * @param kept  whether what is still to ship can be kept as things stand
     * @param lots  which batches serve it as things stand
     */
    record PromiseView(
            int line,
            String variety,
            String trayFormat,
            String site,
            LocalDate shipOn,
            int trays,
            int shipped,
            double confidence,
            boolean kept,
            List<LotShareWire> lots) {

        static PromiseView of(WantedLine line, double confidence, int shipped, @Nullable KeptPromise kept) {
            Cell cell = line.cell();
            return new PromiseView(
                    line.line(),
                    cell.variety(),
                    cell.trayFormat(),
                    cell.site(),
                    line.shipOn(),
                    line.trays(),
                    shipped,
                    confidence,
                    kept == null || kept.kept(),
                    kept == null
                            ? List.of()
                            : kept.shares().stream().map(LotShareWire::of).toList());
        }
    }
}
