package rootcast.availability;

import java.util.List;

/**
 * A promise and what stands behind it.
 *
 * @param keptTrays trays of it that can be kept at its confidence, at most the trays still to ship
 * @param shares    batches that serve them, in the order they are used up; they add up to {@code keptTrays}
 */
public record KeptPromise(Promise promise, int keptTrays, List<Share> shares) {

    public KeptPromise {
        shares = List.copyOf(shares);
    }

    public boolean kept() {
        return shortfallTrays() == 0;
    }

    public int shortfallTrays() {
        return promise.trays() - keptTrays;
    }
}
