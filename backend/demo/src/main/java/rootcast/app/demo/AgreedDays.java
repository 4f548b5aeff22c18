package rootcast.app.demo;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.MatchRules;
import rootcast.availability.Placing;
import rootcast.availability.WantedLine;

/**
 * The lines of an order as the customer takes them on the telephone: where too few trays are open on the ship day, on
 * the nearest other ship day that has enough, a later one first.
 */
final class AgreedDays {

    /** Six weeks later or earlier the customer gives up. */
    private static final int SHIP_DAYS_TRIED = 12;

    private AgreedDays() {}

    /** @param wanted each for a ship day of its site */
    static List<WantedLine> of(List<WantedLine> wanted, double confidence, Map<Cell, CellSupply> open) {
        Map<Integer, Integer> tried = new HashMap<>();
        List<WantedLine> agreed = wanted;
        while (MatchRules.place(agreed, confidence, open::get) instanceof Placing.Refused refused
                && tried.values().stream().noneMatch(days -> days >= SHIP_DAYS_TRIED)) {
            Set<Integer> lines =
                    refused.lines().stream().map(no -> no.wanted().line()).collect(Collectors.toSet());
            lines.forEach(line -> tried.merge(line, 1, Integer::sum));
            agreed = wanted.stream()
                    .map(line -> moved(line, tried.getOrDefault(line.line(), 0)))
                    .toList();
        }
        return agreed;
    }

    /** A week later, a week earlier, two later, two earlier and so on. */
    private static WantedLine moved(WantedLine line, int tried) {
        int weeks = tried % 2 == 1 ? (tried + 1) / 2 : -tried / 2;
        return new WantedLine(line.line(), line.cell(), line.shipOn().plusWeeks(weeks), line.trays());
    }
}
