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
 * An order as the customer takes it on the telephone: where too few trays are open on the ship day, on the nearest other
 * ship day that has enough, a later one first; where none has, half as many trays, and so on; and where not one is as sure as the
 * customer wants it, less sure ones.
 */
record AgreedOrder(List<WantedLine> lines, double confidence) {

    /** Even odds are the least that anybody promises. */
    private static final double[] SETTLED_FOR = {0.9, 0.8, 0.5};

    /** Six weeks later or earlier the customer gives up. */
    private static final int SHIP_DAYS_TRIED = 12;

    /** @param wanted each for a ship day of its site */
    static AgreedOrder of(List<WantedLine> wanted, double confidence, Map<Cell, CellSupply> open) {
        AgreedOrder agreed = new AgreedOrder(lines(wanted, confidence, open), confidence);
        for (double less : SETTLED_FOR) {
            if (less < confidence && !agreed.fits(open)) {
                agreed = new AgreedOrder(lines(wanted, less, open), less);
            }
        }
        return agreed;
    }

    private boolean fits(Map<Cell, CellSupply> open) {
        return !(MatchRules.place(lines, confidence, open::get) instanceof Placing.Refused);
    }

    private static List<WantedLine> lines(List<WantedLine> wanted, double confidence, Map<Cell, CellSupply> open) {
        Map<Integer, Talk> talks = new HashMap<>();
        wanted.forEach(line -> talks.put(line.line(), new Talk(line.trays(), 0)));
        List<WantedLine> agreed = wanted;
        while (MatchRules.place(agreed, confidence, open::get) instanceof Placing.Refused refused) {
            Set<Integer> lines =
                    refused.lines().stream().map(no -> no.wanted().line()).collect(Collectors.toSet());
            if (lines.stream().anyMatch(line -> talks.get(line).isOver())) {
                return agreed;
            }
            lines.forEach(line -> talks.compute(line, (number, talk) -> talk.next()));
            agreed = wanted.stream()
                    .map(line -> talks.get(line.line()).about(line))
                    .toList();
        }
        return agreed;
    }

    /** How far one has come with a line: how many trays are spoken of, and how many other ship days were tried for them. */
    private record Talk(int trays, int tried) {

        boolean isOver() {
            return trays == 1 && tried >= SHIP_DAYS_TRIED;
        }

        Talk next() {
            return tried < SHIP_DAYS_TRIED ? new Talk(trays, tried + 1) : new Talk(trays / 2, 0);
        }

        /** A week later, a week earlier, two later, two earlier and so on. */
        WantedLine about(WantedLine line) {
            int weeks = tried % 2 == 1 ? (tried + 1) / 2 : -tried / 2;
            return new WantedLine(line.line(), line.cell(), line.shipOn().plusWeeks(weeks), trays);
        }
    }
}
