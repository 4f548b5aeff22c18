package rootcast.availability;

import java.time.LocalDate;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * What the outlook makes of a batch for sales.
 *
 * <p>At confidence q it offers, on a ship date, the largest n with P(at least n trays can leave on that date) ≥ q: filled
 * with plants that are alive, through with their last stage and not past their last good day. The offer rises while
 * cells get through and falls as they pass their day; where it would not, see {@link LotOffer}. Probabilities within
 * {@value #ROUNDING} below q count as q: 0.9 that was computed as 0.8999999999999999 is 0.9.
 */
public final class SupplyLot {

    static final double ROUNDING = 1e-12;

    /** Confidences in use are two or three; somebody may still try out a thousand. */
    private static final int MOST_KEPT = 16;

    private final String batch;
    private final ReadyOdds ready;
    private final TrayOdds odds;
    private final TraysByWorld worlds;
    private final Map<Double, LotOffer> offers = new ConcurrentHashMap<>();

    /**
     * @param batch id of the batch
     * @param ready when nine cells in ten are through, to be shown
     * @param odds  how many trays can leave when
     * @param worlds the same world by world, where it has things in common with other lots
     */
    public SupplyLot(String batch, ReadyOdds ready, TrayOdds odds, TraysByWorld worlds) {
        this.batch = batch;
        this.ready = ready;
        this.odds = odds;
        this.worlds = worlds;
    }

    public String batch() {
        return batch;
    }

    /** Probability that nine cells in ten are through by {@code date}; what it offers does not follow from it alone. */
    public double readyBy(LocalDate date) {
        return ready.readyBy(date);
    }

    /** Trays that may be promised from this lot alone for {@code date}. */
    public int traysAt(LocalDate date, double confidence) {
        return at(confidence).on(date);
    }

    /** First date from {@code earliestInclusive} on which it offers a tray, null if there is none. */
    public @Nullable LocalDate usableFrom(LocalDate earliestInclusive, double confidence) {
        LotOffer offer = at(confidence);
        LocalDate first = offer.firstWith(1);
        LocalDate last = offer.lastWith(1);
        if (first == null || last == null || last.isBefore(earliestInclusive)) {
            return null;
        }
        return first.isBefore(earliestInclusive) ? earliestInclusive : first;
    }

    /** Last date on which it offers a tray, null if there is none. */
    public @Nullable LocalDate usableUntilInclusive(double confidence) {
        return at(confidence).lastWith(1);
    }

    TraysByWorld worlds() {
        return worlds;
    }

    TrayOdds odds() {
        return odds;
    }

    LotOffer at(double confidence) {
        Confidence.checked(confidence);
        LotOffer known = offers.get(confidence);
        return known != null ? known : found(confidence);
    }

    /** Who asks at one of the usual confidences is about to ask at the other: both are found in one go. */
    private LotOffer found(double confidence) {
        boolean usual = confidence == Confidence.USUAL || confidence == Confidence.EVEN_ODDS;
        if (usual && offers.size() + 2 <= MOST_KEPT) {
            LotOffer[] both = LotOffer.of(odds, Confidence.USUAL, Confidence.EVEN_ODDS);
            offers.put(Confidence.USUAL, both[0]);
            offers.put(Confidence.EVEN_ODDS, both[1]);
            return confidence == Confidence.USUAL ? both[0] : both[1];
        }
        LotOffer offer = LotOffer.of(odds, confidence)[0];
        if (offers.size() < MOST_KEPT) {
            offers.put(confidence, offer);
        }
        return offer;
    }
}
