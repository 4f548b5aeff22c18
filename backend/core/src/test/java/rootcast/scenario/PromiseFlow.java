package rootcast.scenario;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jgrapht.alg.flow.EdmondsKarpMFImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import rootcast.availability.Promise;

/**
 * The oracle: promises that count at a confidence, and lots as they count at it, as a network from ship dates to
 * releases of trays, solved by Edmonds and Karp's method.
 */
final class PromiseFlow {

    private static final String SOURCE = "source";
    private static final String SINK = "sink";

    private final List<RandomLot> lots;
    private final List<Promise> promises;
    private final LocalDate today;

    PromiseFlow(List<RandomLot> lots, List<Promise> promises, LocalDate today) {
        this.lots = lots;
        this.promises = promises;
        this.today = today;
    }

    boolean everythingFits() {
        return shortage().values().stream().allMatch(trays -> trays == 0);
    }

    /** Trays that cannot be served at each confidence that promises were made at. */
    Map<Double, Long> shortage() {
        Map<Double, Long> shortage = new TreeMap<>();
        for (double level : levels()) {
            Map<LocalDate, Integer> demand = demand(level);
            shortage.put(level, sum(demand) - flow(demand, level));
        }
        return shortage;
    }

    /** Most that a new promise may ask for, the trays missing elsewhere held back. */
    long open(LocalDate date, double confidence) {
        SortedSet<Double> bearing = levels();
        bearing.add(confidence);
        long least = Long.MAX_VALUE;
        for (double level : bearing.headSet(Math.nextUp(confidence))) {
            Map<LocalDate, Integer> demand = demand(level);
            long booked = sum(demand);
            demand.merge(date, 100_000, Integer::sum);
            least = Math.min(least, flow(demand, level) - booked);
        }
        return Math.max(0, least);
    }

    private SortedSet<Double> levels() {
        SortedSet<Double> levels = new TreeSet<>();
        promises.forEach(promise -> levels.add(promise.confidence()));
        return levels;
    }

    private Map<LocalDate, Integer> demand(double level) {
        Map<LocalDate, Integer> trays = new TreeMap<>();
        for (Promise promise : promises) {
            if (promise.confidence() >= level) {
                LocalDate overdueToday = promise.shipOn().isBefore(today) ? today : promise.shipOn();
                trays.merge(overdueToday, promise.trays(), Integer::sum);
            }
        }
        return trays;
    }

    private static long sum(Map<LocalDate, Integer> demand) {
        return demand.values().stream().mapToLong(Integer::longValue).sum();
    }

    private long flow(Map<LocalDate, Integer> demand, double level) {
        var graph = new SimpleDirectedWeightedGraph<String, DefaultWeightedEdge>(DefaultWeightedEdge.class);
        graph.addVertex(SOURCE);
        graph.addVertex(SINK);
        demand.forEach((date, trays) -> edge(graph, SOURCE, date.toString(), trays));
        for (RandomLot lot : lots) {
            int before = 0;
            for (LocalDate from = today; !from.isAfter(lot.until()); from = from.plusDays(1)) {
                int offered = lot.offers(from, level);
                if (offered > before) {
                    String release = lot.batch() + " from " + from;
                    edge(graph, release, SINK, offered - before);
                    for (LocalDate date : demand.keySet()) {
                        if (!date.isBefore(from) && !date.isAfter(lot.until())) {
                            edge(graph, date.toString(), release, 1e9);
                        }
                    }
                    before = offered;
                }
            }
        }
        return Math.round(new EdmondsKarpMFImpl<>(graph).getMaximumFlowValue(SOURCE, SINK));
    }

    private static void edge(
            SimpleDirectedWeightedGraph<String, DefaultWeightedEdge> graph, String from, String to, double trays) {
        graph.addVertex(from);
        graph.addVertex(to);
        graph.setEdgeWeight(graph.addEdge(from, to), trays);
    }
}
