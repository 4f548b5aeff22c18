package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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
            int tray = 0;
            for (Set<LocalDate> usable : trays(lot, level)) {
                String name = lot.batch() + " tray " + tray++;
                edge(graph, name, "sink", 1);
                demand.keySet().stream()
                        .filter(usable::contains)
                        .forEach(day -> edge(graph, day.toString(), name, 1e9));
            }
        }
        return Math.round(new PushRelabelMFImpl<>(graph).getMaximumFlowValue("source", "sink"));
    }

    /**
     * The days of each tray, from the definition: those on which so many trays reach the level; of several runs the one with
     * the day on which they are likeliest; and only days that the trays before it have too.
     */
    static List<Set<LocalDate>> trays(SupplyLot lot, double level) {
        List<Set<LocalDate>> all = new ArrayList<>();
        Set<LocalDate> before = new TreeSet<>(Periods.periods(1, RandomCells.PERIODS));
        for (int tray = 1; !before.isEmpty(); tray++) {
            TreeMap<LocalDate, Double> odds = new TreeMap<>();
            for (LocalDate day : Periods.periods(1, RandomCells.PERIODS)) {
                odds.put(day, lot.odds().on(day).applyAsDouble(tray));
            }
            double best = odds.values().stream().mapToDouble(each -> each).max().orElse(0);
            LocalDate bestDay = odds.keySet().stream()
                    .filter(day -> odds.get(day) == best)
                    .findFirst()
                    .orElseThrow();
            Set<LocalDate> days = new TreeSet<>();
            for (LocalDate day = bestDay; odds.getOrDefault(day, 0.0) >= level - 1e-12; day = day.plusDays(1)) {
                days.add(day);
            }
            for (LocalDate day = bestDay; odds.getOrDefault(day, 0.0) >= level - 1e-12; day = day.minusDays(1)) {
                days.add(day);
            }
            days.retainAll(before);
            if (!days.isEmpty()) {
                all.add(days);
            }
            before = days;
        }
        return all;
    }

    private static void edge(
            SimpleDirectedWeightedGraph<String, DefaultWeightedEdge> graph, String from, String to, double trays) {
        graph.addVertex(from);
        graph.addVertex(to);
        graph.setEdgeWeight(graph.addEdge(from, to), trays);
    }
}
