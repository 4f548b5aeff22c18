package rootcast.app.availability.store;

import java.util.List;
import java.util.UUID;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import rootcast.app.availability.Order;
import rootcast.availability.WantedLine;
import rootcast.facts.FactPosition;

/** Order rows to the words of availability and back. */
@Mapper
abstract class OrderMapper {

    @Mapping(target = "position", source = "row.positionNo")
    @Mapping(target = "number", source = "row.orderNo")
    abstract Order order(CustomerOrderRow row, List<OrderLineRow> lines);

    FactPosition position(long positionNo) {
        return new FactPosition(positionNo);
    }

    @Mapping(target = "line", source = "id.lineNo")
    @Mapping(
            target = "cell",
            expression = "java(new rootcast.availability.Cell(row.variety, row.trayFormat, row.site))")
    abstract WantedLine line(OrderLineRow row);

    @Mapping(target = "positionNo", source = "position.value")
    @Mapping(target = "orderNo", source = "number")
    @Mapping(target = "releasedPosition", ignore = true)
    abstract CustomerOrderRow row(Order order);

    @Mapping(target = "id", expression = "java(new OrderLineRow.Id(order, line.line()))")
    @Mapping(target = "variety", source = "line.cell.variety")
    @Mapping(target = "trayFormat", source = "line.cell.trayFormat")
    @Mapping(target = "site", source = "line.cell.site")
    abstract OrderLineRow row(WantedLine line, UUID order);
}
