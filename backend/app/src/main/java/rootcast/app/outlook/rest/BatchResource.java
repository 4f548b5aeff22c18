package rootcast.app.outlook.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.BatchesInTime;
import rootcast.app.outlook.LiveBatches;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.site.LiveSites;
import rootcast.crop.Stage;

/** Batches: how they stand and what is expected of them. */
@Path("/api/batches")
@Needs(Right.READ)
public class BatchResource {

    @Inject
    Caller caller;

    @Inject
    LiveBatches batches;

    @Inject
    LiveCatalogue names;

    @Inject
    LiveSites sites;

    @Inject
    BatchesInTime past;

    @Inject
    InstantSource time;

    public record BatchList(Instant asOf, long position, List<BatchView> batches) {}

    @GET
    public BatchList all(
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String house,
            @RestQuery @Nullable String crop,
            @RestQuery @Nullable String variety,
            @RestQuery @Nullable Stage stage,
            @RestQuery @Nullable String text,
            @RestQuery @DefaultValue("live") String state) {
        if (!List.of("live", "finished", "all").contains(state)) {
            throw Problem.malformed("state", "is '" + state + "'; it must be live, finished or all");
        }
        Sites theirs = caller.mayRead();
        List<BatchView> shown = batches.pictures().stream()
                .filter(picture -> theirs.includes(picture.batch().site()))
                .filter(picture -> state.equals("all") || picture.state().isFinished() == state.equals("finished"))
                .filter(picture -> isBlank(site) || picture.batch().site().equals(site))
                .filter(picture -> isBlank(house) || picture.state().house().equals(house))
                .filter(picture -> isBlank(variety) || picture.batch().variety().equals(variety))
                .filter(picture -> stage == null || picture.state().stage() == stage)
                .map(picture -> BatchView.of(picture, names))
                .filter(view -> isBlank(crop) || view.crop().equals(crop))
                .filter(view -> isBlank(text) || speaksOf(view, text.strip().toLowerCase(Locale.ROOT)))
                .sorted(Comparator.comparing(BatchView::stuckAt).reversed().thenComparing(BatchView::id))
                .toList();
        return new BatchList(batches.asOf(), batches.takenIn().value(), shown);
    }

    /** With {@code asOf} or {@code knownAt} the batch as it was. */
    @GET
    @Path("{id}")
    public BatchView one(@RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        AsOf when = AsOf.of(asOf, knownAt, time);
        BatchPicture picture = isBlank(asOf) && isBlank(knownAt)
                ? batches.picture(id).orElseThrow(() -> Problem.notFound("batch", id))
                : past.batch(id, when).picture();
        return BatchView.of(theirs(picture), names);
    }

    /** What a plot of the batch shows: medium temperature by the hour, and how far it is. */
    @GET
    @Path("{id}/development")
    public DevelopmentWires.Development development(
            @RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        BatchInTime batch = past.batch(id, AsOf.of(asOf, knownAt, time));
        theirs(batch.picture());
        return DevelopmentWires.of(batch);
    }

    /** Why this date: what moved it from the plan, cause by cause. */
    @GET
    @Path("{id}/explanation")
    public ExplanationWire explanation(
            @RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        BatchInTime batch = past.batch(id, AsOf.of(asOf, knownAt, time));
        theirs(batch.picture());
        return ExplanationWire.of(
                batch, sites.site(batch.picture().batch().site()).zone());
    }

    /** A batch of another site is not theirs to know of. */
    private BatchPicture theirs(BatchPicture picture) {
        if (!caller.mayRead().includes(picture.batch().site())) {
            throw Problem.notFound("batch", picture.batch().id());
        }
        return picture;
    }

    private static boolean speaksOf(BatchView view, String text) {
        return (view.id() + " " + view.varietyName() + " " + view.variety() + " " + view.cropName() + " "
                        + view.house())
                .toLowerCase(Locale.ROOT)
                .contains(text);
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
