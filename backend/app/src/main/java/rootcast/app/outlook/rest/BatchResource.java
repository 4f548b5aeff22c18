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
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.BatchesInTime;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.outlook.FaultyBatch;
import rootcast.app.outlook.FinishedBatches;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.LiveSites;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.crop.Stage;
import rootcast.saying.Fault;

/** Batches: how they stand and what is expected of them. */
@Path("/api/batches")
@Needs(Right.READ)
public class BatchResource {

    @Inject
    Snapshots snapshots;

    @Inject
    FinishedBatches finished;

    @Inject
    Caller caller;

    @Inject
    LiveCatalogue names;

    @Inject
    LiveSites sites;

    @Inject
    BatchesInTime past;

    @Inject
    InstantSource time;

    /** @param faulty batches that could not be computed; their plants are in no figure anywhere */
    public record BatchList(Instant asOf, long position, List<BatchView> batches, List<FaultyView> faulty) {}

    public record FaultyView(
            String id,
            String site,
            String variety,
            String varietyName,
            String trayFormat,
            Instant stuckAt,
            String fault) {}

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
            throw Problem.malformed("state", Fault.ONE_OF, List.of("live", "finished", "all"));
        }
        Snapshot now = snapshots.now();
        BatchesSnapshot batches = now.part(BatchesSnapshot.class);
        Sites sites = caller.mayRead();
        List<BatchView> shown = Stream.concat(
                        state.equals("finished") ? Stream.of() : batches.all().stream(),
                        state.equals("live")
                                ? Stream.of()
                                : finished.of(isBlank(site) ? null : site, isBlank(variety) ? null : variety).stream())
                .filter(snapshot -> sites.includes(snapshot.batch().site()))
                .filter(snapshot -> isBlank(site) || snapshot.batch().site().equals(site))
                .filter(snapshot -> isBlank(house) || snapshot.state().house().equals(house))
                .filter(snapshot ->
                        isBlank(variety) || snapshot.batch().variety().equals(variety))
                .filter(snapshot -> stage == null || snapshot.state().stage() == stage)
                .map(snapshot -> BatchView.of(snapshot, names))
                .filter(view -> isBlank(crop) || view.crop().equals(crop))
                .filter(view -> isBlank(text) || speaksOf(view, text.strip().toLowerCase(Locale.ROOT)))
                .sorted(Comparator.comparing(BatchView::stuckAt).reversed().thenComparing(BatchView::id))
                .toList();
        List<FaultyView> faulty = batches.faulty().values().stream()
                .filter(each -> sites.includes(each.batch().site()))
                .filter(each -> isBlank(site) || each.batch().site().equals(site))
                .map(this::view)
                .sorted(Comparator.comparing(FaultyView::id))
                .toList();
        return new BatchList(now.asOf(), now.position().value(), shown, faulty);
    }

    private FaultyView view(FaultyBatch faulty) {
        var batch = faulty.batch();
        return new FaultyView(
                batch.id(),
                batch.site(),
                batch.variety(),
                names.variety(batch.variety()).name(),
                batch.trayFormat().code(),
                batch.stuckAt(),
                faulty.fault());
    }

    /** With {@code asOf} or {@code knownAt} the batch as it was. */
    @GET
    @Path("{id}")
    public BatchView one(@RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        AsOf when = AsOf.of(asOf, knownAt, time);
        BatchSnapshot snapshot = isBlank(asOf) && isBlank(knownAt)
                ? now(id)
                : past.batch(id, when).snapshot();
        return BatchView.of(theirs(snapshot), names);
    }

    private BatchSnapshot now(String id) {
        BatchesSnapshot batches = snapshots.now().part(BatchesSnapshot.class);
        FaultyBatch faulty = batches.faulty().get(id);
        if (faulty != null) {
            throw Problem.notComputed(id, faulty.fault());
        }
        return batches.batch(id).or(() -> finished.batch(id)).orElseThrow(() -> Problem.notFound(Thing.BATCH, id));
    }

    /** What a plot of the batch shows: medium temperature by the hour, and how far it is. */
    @GET
    @Path("{id}/development")
    public DevelopmentWires.Development development(
            @RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        BatchInTime batch = past.batch(id, AsOf.of(asOf, knownAt, time));
        theirs(batch.snapshot());
        return DevelopmentWires.of(batch);
    }

    /** Why this date: what moved it from the plan, cause by cause. */
    @GET
    @Path("{id}/explanation")
    public ExplanationWire explanation(
            @RestPath String id, @RestQuery @Nullable String asOf, @RestQuery @Nullable String knownAt) {
        BatchInTime batch = past.batch(id, AsOf.of(asOf, knownAt, time));
        theirs(batch.snapshot());
        return ExplanationWire.of(
                batch, sites.site(batch.snapshot().batch().site()).zone());
    }

    /** A batch of another site is not theirs to know of. */
    private BatchSnapshot theirs(BatchSnapshot snapshot) {
        if (!caller.mayRead().includes(snapshot.batch().site())) {
            throw Problem.notFound(Thing.BATCH, snapshot.batch().id());
        }
        return snapshot;
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
