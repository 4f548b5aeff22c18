package rootcast.ledger;

/**
 * A count of part of a batch.
 *
 * @param trays  trays looked at
 * @param cells  cells looked at in them
 * @param blanks cells of those without a living plant
 */
public record Sample(int trays, int cells, int blanks) {

    /**
     * Plants alive in {@code places} by the sample's own share, rounded to the nearest plant: the estimate that the
     * ledger posts. How sure it is belongs to the outlook.
     */
    public int alivePlants(int places) {
        return Math.toIntExact(Math.round((double) places * (cells - blanks) / cells));
    }
}
