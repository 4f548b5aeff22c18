package rootcast.availability;

import java.time.LocalDate;

/** How likely nine cells in ten of a batch are through by the start of a ship date. */
@FunctionalInterface
public interface ReadyOdds {

    /** Probability, 0 to 1; never falls from one date to a later one. */
    double readyBy(LocalDate date);
}
