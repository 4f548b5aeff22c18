package rootcast.app.problem;

import rootcast.outlook.DateDistribution;
import rootcast.outlook.Doubt;

/**
 * From what the core doubts to the question that the client puts: the same write with {@code confirmed: true} passes.
 */
public final class DoubtTable {

    private DoubtTable() {}

    public static Problem problemOf(Doubt doubt) {
        if (doubt instanceof Doubt.OfPlants no) {
            return new Problem(
                            ProblemType.IMPLAUSIBLE_PLANTS,
                            "That leaves %d plants alive; the books say %d and between %d and %d are expected. Send it again with confirmed: true if it is right."
                                    .formatted(no.seenPlants(), no.bookedPlants(), no.leastPlants(), no.mostPlants()))
                    .with("asked", no.seenPlants())
                    .with("booked", no.bookedPlants())
                    .with("least", no.leastPlants())
                    .with("most", no.mostPlants())
                    .with("probability", no.probability());
        }
        if (doubt instanceof Doubt.OfStage no) {
            Problem problem = new Problem(
                            ProblemType.IMPLAUSIBLE_STAGE,
                            "%s at %s is earlier than it is expected. Send it again with confirmed: true if it is right."
                                    .formatted(no.stage(), no.seenAt()))
                    .with("asked", no.stage().name())
                    .with("seenAt", no.seenAt())
                    .with("probability", no.probability());
            if (!no.expected().p50().equals(DateDistribution.NEVER)) {
                problem.with("expected", no.expected().p50());
            }
            return problem;
        }
        throw new IllegalStateException("no line for " + doubt);
    }
}
