package rootcast.app.trackrecord.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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
import rootcast.app.site.LiveSites;
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

    @Inject
    LiveSites sites;

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
                TrackRecordWire.Held.of(atLead),
                TrackRecordWire.number(figures.pinballDays()),
                TrackRecordWire.number(figures.crpsDays()),
                TrackRecordWire.number(figures.promisedKept()),
                figures.promisedCases(),
                TrackRecordWire.Baselines.of(figures),
                BackTest.LEADS_DAYS.stream()
                        .map(lead -> TrackRecordWire.ByLead.of(lead, at(lead, cases)))
                        .toList(),
                byCrop(leadDays, atLead),
                bySite(atLead),
                byQuarter(atLead),
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

    private List<TrackRecordWire.ByCrop> byCrop(int leadDays, List<Case> cases) {
        Map<String, List<Case>> byCrop = cases.stream().collect(Collectors.groupingBy(Case::crop));
        return catalogue.crops().stream()
                .map(SourcedCrop::crop)
                .filter(crop -> byCrop.containsKey(crop.code()))
                .map(crop -> TrackRecordWire.ByCrop.of(crop, leadDays, byCrop.get(crop.code())))
                .toList();
    }

    private List<TrackRecordWire.BySite> bySite(List<Case> cases) {
        Map<String, List<Case>> bySite = cases.stream()
                .collect(Collectors.groupingBy(each -> each.circumstances().site(), TreeMap::new, Collectors.toList()));
        return bySite.entrySet().stream()
                .map(of -> new TrackRecordWire.BySite(
                        of.getKey(), sites.site(of.getKey()).name(), TrackRecordWire.Held.of(of.getValue())))
                .toList();
    }

    /** The newest first. */
    private static List<TrackRecordWire.ByQuarter> byQuarter(List<Case> cases) {
        Map<LocalDate, List<Case>> byQuarter = cases.stream()
                .collect(Collectors.groupingBy(
                        each -> quarterOf(each.circumstances().readyOn()),
                        () -> new TreeMap<LocalDate, List<Case>>(Comparator.reverseOrder()),
                        Collectors.toList()));
        return byQuarter.entrySet().stream()
                .map(of -> new TrackRecordWire.ByQuarter(of.getKey(), TrackRecordWire.Held.of(of.getValue())))
                .toList();
    }

    private static LocalDate quarterOf(LocalDate day) {
        return day.with(day.getMonth().firstMonthOfQuarter()).withDayOfMonth(1);
    }
}
