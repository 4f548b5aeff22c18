package rootcast.ledger;

import org.jspecify.annotations.Nullable;

/**
 * Where plants are held. The plants of all accounts of a batch sum to zero at every instant: what the supplier gave is
 * negative, what is alive, lost or shipped is positive.
 *
 * @param house only of {@link Kind#ALIVE}
 * @param cause only of {@link Kind#LOST}
 */
public record Account(
        Kind kind, @Nullable String house, @Nullable Cause cause) {

    public enum Kind {
        SUPPLIER,
        ALIVE,
        LOST,
        SHIPPED
    }

    public static final Account SUPPLIER = new Account(Kind.SUPPLIER, null, null);
    public static final Account SHIPPED = new Account(Kind.SHIPPED, null, null);

    public static Account aliveIn(String house) {
        return new Account(Kind.ALIVE, house, null);
    }

    public static Account lostTo(Cause cause) {
        return new Account(Kind.LOST, null, cause);
    }
}
