package rootcast.app.ledger.store;

import org.mapstruct.AfterMapping;
import org.mapstruct.BeanMapping;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import org.mapstruct.MappingTarget;
import org.mapstruct.ReportingPolicy;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.ledger.Account;
import rootcast.ledger.Batch;
import rootcast.ledger.Cause;
import rootcast.ledger.Entry;
import rootcast.ledger.OrderLine;
import rootcast.ledger.Posting;
import rootcast.ledger.Sample;
import rootcast.ledger.What;

/** Ledger rows to the core's words and back. */
@Mapper
abstract class EntryMapper {

    @Mapping(target = "id", source = "row.id")
    @Mapping(target = "trayFormat", source = "format")
    abstract Batch batch(BatchRow row, TrayFormat format);

    @Mapping(target = "trayFormat", source = "trayFormat.code")
    abstract BatchRow row(Batch batch);

    @Mapping(target = "position", source = "positionNo")
    @Mapping(target = "what", expression = "java(what(row))")
    abstract Entry entry(EntryRow row);

    FactPosition position(long positionNo) {
        return new FactPosition(positionNo);
    }

    What what(EntryRow row) {
        return switch (row.kind) {
            case "stick" -> new What.Stick(row.house, row.trays, row.plants);
            case "loss" -> new What.Loss(row.plants, Cause.valueOf(row.cause));
            case "count" ->
                row.plants != null
                        ? new What.Count(row.plants)
                        : new What.SampledCount(new Sample(row.sampledTrays, row.sampledCells, row.blanks));
            case "stage" -> new What.StageReached(Stage.valueOf(row.stage));
            case "look" -> new What.Look(Stage.valueOf(row.stage), row.lookedCells, row.reachedCells);
            case "move" -> new What.Move(row.house);
            case "ship" ->
                new What.Ship(
                        row.trays, row.plants, row.orderId == null ? null : new OrderLine(row.orderId, row.orderLine));
            case "reversal" -> new What.Reversal(row.reverses, row.reason);
            default -> throw new IllegalStateException("entry of unknown kind " + row.kind);
        };
    }

    /** The columns of the kind are filled by {@link #fill}. */
    @BeanMapping(unmappedTargetPolicy = ReportingPolicy.IGNORE)
    @Mapping(target = "positionNo", source = "position.value")
    @Mapping(target = "kind", expression = "java(entry.what().kind())")
    abstract EntryRow row(Entry entry);

    @AfterMapping
    void fill(Entry entry, @MappingTarget EntryRow row) {
        What what = entry.what();
        if (what instanceof What.Stick stick) {
            row.house = stick.house();
            row.trays = stick.trays();
            row.plants = stick.plants();
        } else if (what instanceof What.Loss loss) {
            row.plants = loss.plants();
            row.cause = loss.cause().name();
        } else if (what instanceof What.Count count) {
            row.plants = count.plants();
        } else if (what instanceof What.SampledCount count) {
            row.sampledTrays = count.sample().trays();
            row.sampledCells = count.sample().cells();
            row.blanks = count.sample().blanks();
        } else if (what instanceof What.StageReached reached) {
            row.stage = reached.stage().name();
        } else if (what instanceof What.Look look) {
            row.stage = look.stage().name();
            row.lookedCells = look.cells();
            row.reachedCells = look.reached();
        } else if (what instanceof What.Move move) {
            row.house = move.house();
        } else if (what instanceof What.Ship ship) {
            row.trays = ship.trays();
            row.plants = ship.plants();
            row.orderId = ship.orderLine() == null ? null : ship.orderLine().order();
            row.orderLine = ship.orderLine() == null ? null : ship.orderLine().line();
        } else if (what instanceof What.Reversal reversal) {
            row.reverses = reversal.entry();
            row.reason = reversal.reason();
        }
    }

    @Mapping(target = "account", expression = "java(account(row))")
    abstract Posting posting(PostingRow row);

    Account account(PostingRow row) {
        return new Account(
                Account.Kind.valueOf(row.account), row.house, row.cause == null ? null : Cause.valueOf(row.cause));
    }

    @Mapping(target = "account", source = "posting.account.kind")
    @Mapping(target = "house", source = "posting.account.house")
    @Mapping(target = "cause", source = "posting.account.cause")
    @Mapping(target = "id", source = "id")
    abstract PostingRow row(Posting posting, PostingRow.Id id, String batch);
}
