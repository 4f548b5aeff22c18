package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jgrapht.alg.flow.PushRelabelMFImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;

/**
 * The oracle: promises and lots of one level as a flow network, solved by the push-relabel method of JGraphT. It shares
 * with the code under test the definition of an offer (counted here tray by tray) and nothing else.
 */
final class MaxFlow {

    private final double level;
    private final CellSupply supply;

    MaxFlow(CellSupply supply, double level) {
        this.supply = supply;
        this.level = level;
    }

    long booked() {
        return demand().values().stream().mapToLong(Integer::longValue).sum();
    }

    long kept() {
        return flow(demand());
    }

    boolean everythingFits() {
        return kept() == booked();
    }

    /** Trays that could be added on a date: with a demand there that nothing can satisfy, what flows beyond the booked. */
    long beyondBooked(LocalDate date) {
        Map<LocalDate, Integer> more = demand();
        more.merge(date, 1_000_000, Integer::sum);
        return flow(more) - booked();
    }

    private Map<LocalDate, Integer> demand() {
        Map<LocalDate, Integer> trays = new TreeMap<>();
        for (Promise promise : supply.promises()) {
            if (promise.confidence() >= level) {
                trays.merge(promise.shipOn(), promise.trays(), Integer::sum);
            }
        }
        return trays;
    }

    private long flow(Map<LocalDate, Integer> demand) {
        var graph = new SimpleDirectedWeightedGraph<String, DefaultWeightedEdge>(DefaultWeightedEdge.class);
        graph.addVertex("source");
        graph.addVertex("sink");
        demand.forEach((date, trays) -> edge(graph, "source", date.toString(), trays));
        for (SupplyLot lot : supply.lots()) {
            int before = 0;
            for (LocalDate date : Periods.periods(1, RandomCells.PERIODS)) {
                int offered = offered(lot, date);
                if (offered > before) {
                    String release = lot.batch() + " from " + date;
                    edge(graph, release, "sink", offered - before);
                    usable(date, lot, demand.keySet()).forEach(day -> edge(graph, day, release, 1e9));
                    before = offered;
                }
            }
        }
        return Math.round(new PushRelabelMFImpl<>(graph).getMaximumFlowValue("source", "sink"));
    }

    private static List<String> usable(LocalDate from, SupplyLot lot, Iterable<LocalDate> dates) {
        var days = new ArrayList<String>();
        for (LocalDate date : dates) {
            if (!date.isBefore(from) && !date.isAfter(lot.usableUntilInclusive())) {
                days.add(date.toString());
            }
        }
        return days;
    }

    private int offered(SupplyLot lot, LocalDate date) {
        if (date.isAfter(lot.usableUntilInclusive())) {
            return 0;
        }
        int trays = 0;
        while (lot.readyBy(date) * lot.atLeast(trays + 1) >= level - 1e-12) {
            trays++;
        }
        return trays;
    }

    private static void edge(
            SimpleDirectedWeightedGraph<String, DefaultWeightedEdge> graph, String from, String to, double trays) {
        graph.addVertex(from);
        graph.addVertex(to);
        graph.setEdgeWeight(graph.addEdge(from, to), trays);
    }
}
