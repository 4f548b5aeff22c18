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
import rootcast.ledger.BatchState;

/** Who stood in a house in an hour, and in which phase. */
final class ResidentBatches {

    /** Worked out once for each hour: every rule asks. */
    private final List<List<Resident>> byHour = new ArrayList<>();

    private final long fromHour;
    private final Watched house;

    record Resident(BatchState state, CropRecipe recipe, Phase phase) {
        String batch() {
            return state.batch().id();
        }

        StageRecipe asks() {
            return recipe.of(phase);
        }

        boolean isUnderMist() {
            return asks().mist() == MistRegime.RUNNING || asks().mist() == MistRegime.WEANING;
        }
    }

    ResidentBatches(Watched house, long fromInclusive, long untilExclusive) {
        fromHour = fromInclusive;
        this.house = house;
        for (long hour = fromInclusive; hour < untilExclusive; hour++) {
            byHour.add(at(HourlySeries.startOf(hour)));
        }
    }

    List<Resident> at(Instant at) {
        List<Resident> present = new ArrayList<>();
        for (Watched.Resident resident : house.residents()) {
            if (resident.isIn(house.house(), at)) {
                BatchState state = resident.state();
                Phase phase = resident.recipe().phaseAt(state.batch().stuckAt(), state.reachedAt(), at);
                present.add(new Resident(state, resident.recipe(), phase));
            }
        }
        return present;
    }

    List<Resident> at(long hour) {
        return byHour.get((int) (hour - fromHour));
    }

    List<Resident> at(long hour, Predicate<Resident> concerned) {
        return at(hour).stream().filter(concerned).toList();
    }

    static double least(List<Resident> residents, ToDoubleFunction<Resident> of) {
        return residents.stream().mapToDouble(of).min().orElse(Double.NaN);
    }

    static double most(List<Resident> residents, ToDoubleFunction<Resident> of) {
        return residents.stream().mapToDouble(of).max().orElse(Double.NaN);
    }

    static List<String> names(List<Resident> residents) {
        return residents.stream().map(Resident::batch).sorted().toList();
    }
}
