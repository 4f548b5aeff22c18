package rootcast.app.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.FactHead;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.site.store.Places;
import rootcast.crop.TrayFormat;
import rootcast.ledger.Batch;
import rootcast.ledger.Entry;
import rootcast.ledger.EntryRules;
import rootcast.ledger.What;
import rootcast.saying.Fault;
import rootcast.site.House;
import rootcast.site.Site;

/** Opens a batch and writes its first entry. */
@ApplicationScoped
public class StickBatch {

    /** As far back as readings are taken; an outlook is made hour by hour from there. */
    private static final int OLDEST_DAYS = 5 * 365;

    @Inject
    Rights rights;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    PanacheLedger ledger;

    @Inject
    RecordEntry recordEntry;

    @Inject
    FactHead head;

    /** @param plants every cell of every tray if not given */
    public record Wanted(
            String site,
            String house,
            String variety,
            String trayFormat,
            Instant stuckAt,
            int trays,
            @Nullable Integer plants,
            @Nullable String note) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public RecordEntry.Recorded stick(Wanted wanted, String by, Instant recordedAt) {
        Site site = places.site(wanted.site()).orElseThrow(() -> Problem.unknownCode("site", wanted.site()));
        rights.at(site.code(), Right.RECORD);
        House house = places.house(wanted.house()).orElseThrow(() -> Problem.unknownCode("house", wanted.house()));
        if (!house.site().equals(site.code())) {
            throw Problem.notAllowed("house", house.code(), Fault.OTHER_SITE, house.site(), site.code());
        }
        if (catalogue.variety(wanted.variety()).isEmpty()) {
            throw Problem.unknownCode("variety", wanted.variety());
        }
        TrayFormat format = catalogue
                .trayFormat(wanted.trayFormat())
                .orElseThrow(() -> Problem.unknownCode("trayFormat", wanted.trayFormat()));
        if (wanted.trays() < 1 || wanted.trays() > EntryRules.MOST_TRAYS) {
            throw Problem.notAllowed("trays", wanted.trays(), Fault.BETWEEN, 1, EntryRules.MOST_TRAYS);
        }
        Instant stuckAt = wanted.stuckAt().truncatedTo(ChronoUnit.MICROS);
        tooLongAgo(stuckAt, recordedAt).ifPresent(problem -> {
            throw problem;
        });
        String id = nextId(site, stuckAt);
        Batch batch = new Batch(id, site.code(), wanted.variety(), format, stuckAt);
        int plants = wanted.plants() == null ? wanted.trays() * format.cells() : wanted.plants();
        What.Stick what = new What.Stick(house.code(), wanted.trays(), plants);
        Entry entry = new Entry(UUID.randomUUID(), head.next(), id, stuckAt, recordedAt, by, what, wanted.note());
        return recordEntry.write(batch, List.of(), entry, true);
    }

    /** Why a batch cannot be stuck at that moment any more; empty if it can. */
    public static Optional<Problem> tooLongAgo(Instant stuckAt, Instant recordedAt) {
        return stuckAt.isBefore(recordedAt.minus(OLDEST_DAYS, ChronoUnit.DAYS))
                ? Optional.of(Problem.notAllowed("stuckAt", stuckAt, Fault.TOO_LONG_AGO, OLDEST_DAYS))
                : Optional.empty();
    }

    /** Site, ISO year and week of sticking, and a number: short enough for a label and for the telephone. */
    private String nextId(Site site, Instant stuckAt) {
        var day = site.dayOf(stuckAt);
        String prefix = String.format(
                Locale.ROOT,
                "%s-%02d%02d-",
                site.code(),
                day.get(IsoFields.WEEK_BASED_YEAR) % 100,
                day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
        return prefix + String.format(Locale.ROOT, "%03d", ledger.countIdsBeginning(prefix) + 1);
    }
}
