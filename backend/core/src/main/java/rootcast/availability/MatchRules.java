package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Whether an order may be promised: all of its lines or none.
 *
 * <ol>
 *   <li>A line fits if it asks for no more than is open on its ship date: {@link #fits}.
 *   <li>Lines of one order compete: each is checked with those before it that fit already placed: {@link #place}.
 *   <li>A line that does not fit is told the nearest date with enough before and after its own: {@link #refusal}.
 * </ol>
 */
public final class MatchRules {

    /** How far from the wanted date another one is looked for, either way. */
    public static final int SEARCH_WEEKS = 26;

    private final double confidence;
    private final Map<Cell, CellSupply> placed = new HashMap<>();

    private MatchRules(double confidence) {
        this.confidence = Confidence.checked(confidence);
    }

    /**
     * @param supplyOf what a cell holds, asked once per cell; without lots and promises for one that nobody grows
     */
    public static Placing place(List<WantedLine> lines, double confidence, Function<Cell, CellSupply> supplyOf) {
        var rules = new MatchRules(confidence);
        List<NotEnoughOpen> refused = new ArrayList<>();
        for (WantedLine line : lines) {
            CellSupply supply = rules.placed.computeIfAbsent(line.cell(), supplyOf);
            int open = rules.open(supply, line.shipOn());
            if (fits(line, open)) {
                rules.placed.put(line.cell(), supply.plus(rules.promised(line)));
            } else {
                refused.add(rules.refusal(supply, line, open));
            }
        }
        return refused.isEmpty() ? new Placing.Accepted(lines, confidence) : new Placing.Refused(refused);
    }

    private static boolean fits(WantedLine line, int open) {
        return line.trays() <= open;
    }

    private int open(CellSupply supply, LocalDate shipOn) {
        if (shipOn.isBefore(supply.today())) {
            return 0;
        }
        return OpenTrays.of(supply, List.of(shipOn)).at(confidence).open(shipOn);
    }

    private Promise promised(WantedLine line) {
        return new Promise("", line.line(), line.shipOn(), line.trays(), confidence, Long.MAX_VALUE);
    }

    private NotEnoughOpen refusal(CellSupply supply, WantedLine line, int open) {
        List<LocalDate> earlier = new ArrayList<>();
        List<LocalDate> later = new ArrayList<>();
        for (int days = 1; days <= 7 * SEARCH_WEEKS; days++) {
            add(line.shipOn().minusDays(days), supply, earlier);
            add(line.shipOn().plusDays(days), supply, later);
        }
        List<LocalDate> all = new ArrayList<>(earlier);
        all.addAll(later);
        OpenAt figures = OpenTrays.of(supply, all).at(confidence);
        return new NotEnoughOpen(
                line, open, firstWithEnough(earlier, line, figures), firstWithEnough(later, line, figures));
    }

    private static void add(LocalDate date, CellSupply supply, List<LocalDate> dates) {
        if (!date.isBefore(supply.today())) {
            dates.add(date);
        }
    }

    private static NotEnoughOpen.@Nullable Nearest firstWithEnough(
            List<LocalDate> dates, WantedLine line, OpenAt figures) {
        for (LocalDate date : dates) {
            int open = figures.open(date);
            if (fits(line, open)) {
                return new NotEnoughOpen.Nearest(date, open);
            }
        }
        return null;
    }
}
