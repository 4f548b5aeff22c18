package rootcast.warnings;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.crop.StageRecipe;
import rootcast.ledger.Standing;

/** Who stood in a house in an hour, and in which phase. */
final class Lodgers {

    /** Worked out once for each hour: every rule asks. */
    private final List<List<Lodger>> byHour = new ArrayList<>();

    private final long fromHour;

    record Lodger(Standing standing, CropRecipe recipe, Phase phase) {
        String batch() {
            return standing.batch().id();
        }

        StageRecipe asks() {
            return recipe.of(phase);
        }

        boolean isBeforeCallus() {
            return phase == Phase.STICKING || phase == Phase.CALLUSING;
        }

        boolean isUnderMist() {
            return asks().mist() == MistRegime.RUNNING || asks().mist() == MistRegime.WEANING;
        }
    }

    Lodgers(Watched house, long fromInclusive, long untilExclusive) {
        fromHour = fromInclusive;
        for (long hour = fromInclusive; hour < untilExclusive; hour++) {
            Instant at = HourlySeries.startOf(hour);
            List<Lodger> present = new ArrayList<>();
            for (Watched.Resident resident : house.residents()) {
                if (resident.isIn(house.house(), at)) {
                    Standing standing = resident.standing();
                    Phase phase = resident.recipe().phaseAt(standing.batch().stuckAt(), standing.reachedAt(), at);
                    present.add(new Lodger(standing, resident.recipe(), phase));
                }
            }
            byHour.add(present);
        }
    }

    List<Lodger> at(long hour) {
        return byHour.get((int) (hour - fromHour));
    }

    List<Lodger> at(long hour, Predicate<Lodger> concerned) {
        return at(hour).stream().filter(concerned).toList();
    }

    static double least(List<Lodger> lodgers, ToDoubleFunction<Lodger> of) {
        return lodgers.stream().mapToDouble(of).min().orElse(Double.NaN);
    }

    static double most(List<Lodger> lodgers, ToDoubleFunction<Lodger> of) {
        return lodgers.stream().mapToDouble(of).max().orElse(Double.NaN);
    }

    static List<String> names(List<Lodger> lodgers) {
        return lodgers.stream().map(Lodger::batch).sorted().toList();
    }
}
