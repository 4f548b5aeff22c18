package rootcast.app.trackrecord.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.trackrecord.TrackRecords;
import rootcast.saying.Fault;
import rootcast.trackrecord.BackTest;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.Figures;

/** How good the predictions were. */
@Path("/api/track-record")
@Needs(Right.READ)
public class TrackRecordResource {

    @Inject
    Caller caller;

    @Inject
    PanacheLedger ledger;

    @Inject
    TrackRecords records;

    @Inject
    Catalogue catalogue;

    @GET
    public TrackRecordWire record(@RestQuery @DefaultValue("7") int leadDays, @RestQuery @Nullable String crop) {
        if (!BackTest.LEADS_DAYS.contains(leadDays)) {
            throw Problem.notAllowed("leadDays", leadDays, Fault.ONE_OF, BackTest.LEADS_DAYS);
        }
        if (crop != null && catalogue.crop(crop).isEmpty()) {
            throw Problem.unknownCode("crop", crop);
        }
        TrackRecords.Cases made = records.cases();
        Predicate<String> theirs = theirBatches();
        List<Case> cases = made.cases().stream()
                .filter(each -> theirs.test(each.batch()))
                .filter(each -> crop == null || each.crop().equals(crop))
                .toList();
        List<Case> atLead = at(leadDays, cases);
        Figures figures = Figures.of(atLead);
        return new TrackRecordWire(
                made.asOf(),
                leadDays,
                crop,
                figures.n(),
                TrackRecordWire.number(figures.maeDays()),
                TrackRecordWire.number(figures.biasDays()),
                TrackRecordWire.coverage(figures),
                TrackRecordWire.number(figures.pinballDays()),
                TrackRecordWire.number(figures.crpsDays()),
                TrackRecordWire.number(figures.promisedKept()),
                figures.promisedCases(),
                TrackRecordWire.Baselines.of(figures),
                BackTest.LEADS_DAYS.stream()
                        .map(lead -> TrackRecordWire.ByLead.of(lead, Figures.of(at(lead, cases))))
                        .toList(),
                byCrop(atLead),
                atLead.stream()
                        .sorted(Comparator.comparing(Case::seenReadyAt)
                                .reversed()
                                .thenComparing(Case::batch))
                        .map(TrackRecordWire.OfBatch::of)
                        .toList());
    }

    /** Who sees some sites only sees how good the predictions were there. */
    private Predicate<String> theirBatches() {
        Sites sites = caller.mayRead();
        if (sites.all()) {
            return any -> true;
        }
        return ledger.idsAt(sites.codes())::contains;
    }

    private static List<Case> at(int leadDays, List<Case> cases) {
        return cases.stream().filter(each -> each.leadDays() == leadDays).toList();
    }

    private List<TrackRecordWire.ByCrop> byCrop(List<Case> cases) {
        return catalogue.crops().stream()
                .map(SourcedCrop::crop)
                .filter(crop -> cases.stream().anyMatch(each -> each.crop().equals(crop.code())))
                .map(crop -> TrackRecordWire.ByCrop.of(
                        crop.code(),
                        crop.name(),
                        Figures.of(cases.stream()
                                .filter(each -> each.crop().equals(crop.code()))
                                .toList())))
                .toList();
    }
}
