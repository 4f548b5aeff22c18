package rootcast.app.availability.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.Order;
import rootcast.app.availability.PlaceOrder;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.availability.ReleaseOrder;
import rootcast.app.availability.rest.OrderWire.OrderView;
import rootcast.app.availability.rest.OrderWire.PromiseView;
import rootcast.app.availability.store.Orders;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.availability.Allotment;
import rootcast.availability.Cell;
import rootcast.availability.KeptPromise;
import rootcast.availability.WantedLine;
import rootcast.ledger.OrderLine;
import rootcast.saying.Fault;

/** Orders: promising trays and giving them back. */
@Path("/api/orders")
public class OrderResource {

    @Inject
    Caller caller;

    @Inject
    Once once;

    @Inject
    PlaceOrder placeOrder;

    @Inject
    ReleaseOrder releaseOrder;

    @Inject
    Orders orders;

    @Inject
    LiveSupply supply;

    @Inject
    InstantSource time;

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = OrderWire.OrderView.class, responseCode = "201")
    @Needs(Right.WRITE_ORDERS)
    public Response place(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid OrderWire wire) {
        UUID id = UUID.randomUUID();
        PlaceOrder.Wanted wanted = wire.wanted(id);
        Once.Answer answer = once.write(
                OnceKey.required(key),
                "POST /api/orders",
                wire,
                201,
                () -> view(placeOrder.place(wanted, caller.who().name(), time.instant())));
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .location(URI.create("/api/orders"))
                .entity(answer.body())
                .build();
    }

    @DELETE
    @Needs(Right.WRITE_ORDERS)
    @Path("{id}")
    public void release(@RestPath String id) {
        UUID order = uuid(id);
        once.write(OnceKey.none(), "DELETE /api/orders/" + order, "", 204, () -> {
            releaseOrder.release(order, caller.who().name(), time.instant());
            return null;
        });
    }

    @GET
    @Needs(Right.READ_ORDERS)
    @Path("{id}")
    public OrderView one(@RestPath String id) {
        return orders.order(uuid(id))
                .flatMap(this::asFarAsTheirs)
                .map(order -> new Views(supply).of(order))
                .orElseThrow(() -> Problem.notFound(Thing.ORDER, id));
    }

    /**
     * Orders, newest first.
     *
     * @param text       part of the customer, or the number
     * @param variety    only orders with a line of this one; with the two below, of all that are given
     * @param trayFormat of that line
     * @param site       of that line
     */
    @GET
    @Needs(Right.READ_ORDERS)
    public List<OrderView> all(
            @RestQuery @Nullable String text,
            @RestQuery @DefaultValue("open") String state,
            @RestQuery @Nullable String variety,
            @RestQuery @Nullable String trayFormat,
            @RestQuery @Nullable String site) {
        if (!List.of("open", "all").contains(state)) {
            throw Problem.malformed("state", Fault.ONE_OF, List.of("open", "all"));
        }
        Views views = new Views(supply);
        String wanted = text == null ? "" : text.strip().toLowerCase(Locale.ROOT);
        return (state.equals("open") ? supply.promises().orders().values() : orders.all())
                .stream()
                        .filter(order ->
                                order.customer().toLowerCase(Locale.ROOT).contains(wanted)
                                        || Long.toString(order.number()).equals(wanted))
                        .flatMap(order -> asFarAsTheirs(order).stream())
                        .filter(order -> order.lines().stream()
                                .map(WantedLine::cell)
                                .anyMatch(cell -> isAsked(variety, cell.variety())
                                        && isAsked(trayFormat, cell.trayFormat())
                                        && isAsked(site, cell.site())))
                        .sorted(Comparator.comparing(Order::position).reversed())
                        .map(views::of)
                        .filter(view -> state.equals("all") || isOpen(view))
                        .toList();
    }

    private static boolean isAsked(@Nullable String asked, String code) {
        return asked == null || asked.equals(code);
    }

    /** Who ships sees the lines of their own sites, and no note: that is between sales and the customer. */
    private Optional<Order> asFarAsTheirs(Order order) {
        Sites sites = caller.asking().sites(Right.READ_ORDERS);
        if (sites.all()) {
            return Optional.of(order);
        }
        List<WantedLine> theirs = order.lines().stream()
                .filter(line -> sites.includes(line.cell().site()))
                .toList();
        return theirs.isEmpty() ? Optional.empty() : Optional.of(only(theirs, order));
    }

    private static Order only(List<WantedLine> lines, Order order) {
        return new Order(
                order.id(),
                order.number(),
                order.customer(),
                null,
                order.confidence(),
                order.recordedAt(),
                order.recordedBy(),
                order.position(),
                lines,
                order.releasedAt(),
                order.releasedBy());
    }

    private static boolean isOpen(OrderView view) {
        return view.promises().stream().anyMatch(promise -> promise.shipped() < promise.trays());
    }

    private static OrderView view(PlaceOrder.Placed placed) {
        Map<Integer, KeptPromise> kept = placed.promises().stream()
                .collect(Collectors.toMap(each -> each.promise().line(), Function.identity()));
        Order order = placed.order();
        return OrderView.of(
                order,
                order.lines().stream()
                        .map(line -> PromiseView.of(line, order.confidence(), 0, kept.get(line.line())))
                        .toList());
    }

    /** Orders as they are shown; each cell's promises are allotted once, however many lines it has. */
    private static final class Views {
        private final LiveSupply supply;
        private final PromisesSnapshot promises;
        private final Map<Cell, Map<OrderLine, KeptPromise>> kept = new HashMap<>();

        Views(LiveSupply supply) {
            this.supply = supply;
            this.promises = supply.promises();
        }

        OrderView of(Order order) {
            return OrderView.of(
                    order,
                    order.lines().stream().map(line -> promise(order, line)).toList());
        }

        private PromiseView promise(Order order, WantedLine line) {
            OrderLine of = new OrderLine(order.id(), line.line());
            return PromiseView.of(
                    line,
                    order.confidence(),
                    promises.shippedFor(of),
                    order.isReleased() ? null : keptIn(line.cell()).get(of));
        }

        private Map<OrderLine, KeptPromise> keptIn(Cell cell) {
            return kept.computeIfAbsent(
                    cell,
                    any -> Allotment.of(supply.cell(cell).supply()).promises().stream()
                            .collect(Collectors.toMap(
                                    each -> new OrderLine(
                                            UUID.fromString(each.promise().order()),
                                            each.promise().line()),
                                    Function.identity())));
        }
    }

    private static UUID uuid(String id) {
        try {
            return UUID.fromString(id);
        } catch (IllegalArgumentException notAnId) {
            throw Problem.notFound(Thing.ORDER, id);
        }
    }
}
