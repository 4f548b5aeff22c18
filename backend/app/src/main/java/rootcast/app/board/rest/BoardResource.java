package rootcast.app.board.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.InstantSource;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardInTime;
import rootcast.app.board.BoardSnapshot;
import rootcast.app.board.BoardView;
import rootcast.app.board.CellFacts;
import rootcast.app.board.LiveBoard;
import rootcast.app.outlook.AsOf;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.availability.Cell;
import rootcast.board.BoardRow;
import rootcast.board.RowHead;
import rootcast.saying.Fault;

/** What can still be promised, for everyone. */
@Path("/api/board")
@Needs(Right.READ)
public class BoardResource {

    @Inject
    LiveBoard board;

    @Inject
    BoardInTime past;

    @Inject
    BoardWriter writer;

    @Inject
    KnownCell known;

    @Inject
    Caller caller;

    @Inject
    InstantSource time;

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(BoardWire.class)
    public byte[] board(
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String weeks,
            @RestQuery @Nullable String confidence,
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String crop,
            @RestQuery @Nullable String text,
            @RestQuery @Nullable String asOf,
            @RestQuery @Nullable String knownAt) {
        AsOf when = AsOf.of(asOf, knownAt, time);
        BoardView view = BoardQuery.view(
                from, weeks, confidence, () -> board.currentWeek(isBlank(site) ? null : site, when.happenedBy()));
        Sites sites = caller.mayRead();
        BoardSnapshot shown = isBlank(asOf) && isBlank(knownAt) ? board.board(view) : past.board(when, view);
        return writer.written(shown, row -> sites.includes(row.head().cell().site()) && isShown(row, site, crop, text));
    }

    /** With {@code asOf} or {@code knownAt} the cell as it was. */
    @GET
    @Path("cell")
    public CellWires.CellExplained cell(
            @RestQuery @Nullable String variety,
            @RestQuery @Nullable String trayFormat,
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String week,
            @RestQuery @Nullable String confidence,
            @RestQuery @Nullable String asOf,
            @RestQuery @Nullable String knownAt) {
        if (variety == null || trayFormat == null || site == null || week == null) {
            throw Problem.malformed("query", Fault.MISSING);
        }
        double sure = BoardQuery.confidence(confidence);
        Cell cell = known.cell(variety, trayFormat, site);
        AsOf when = AsOf.of(asOf, knownAt, time);
        CellFacts facts = isBlank(asOf) && isBlank(knownAt) ? board.cell(cell) : past.cell(when, cell);
        return CellWires.explained(board.explain(facts, BoardQuery.week("week", week), sure), facts);
    }

    private static boolean isShown(BoardRow row, @Nullable String site, @Nullable String crop, @Nullable String text) {
        RowHead head = row.head();
        return (isBlank(site) || head.cell().site().equals(site))
                && (isBlank(crop) || head.crop().equals(crop))
                && (isBlank(text) || speaksOf(head, text.strip().toLowerCase(Locale.ROOT)));
    }

    private static boolean speaksOf(RowHead head, String text) {
        return (head.varietyName() + " " + head.cropName() + " " + head.cell().variety() + " "
                        + head.cell().trayFormat())
                .toLowerCase(Locale.ROOT)
                .contains(text);
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
