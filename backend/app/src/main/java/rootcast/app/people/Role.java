package rootcast.app.people;

import java.util.EnumSet;
import java.util.Set;

/** What somebody does here. The last two are for keys, the others for people. */
public enum Role {
    SALES(Right.READ, Right.READ_ORDERS, Right.WRITE_ORDERS),
    PRODUCTION(Right.READ, Right.READ_ORDERS, Right.RECORD, Right.POST_READINGS, Right.ACKNOWLEDGE_WARNINGS),
    MANAGER(
            Right.READ,
            Right.READ_ORDERS,
            Right.WRITE_ORDERS,
            Right.RECORD,
            Right.POST_READINGS,
            Right.ACKNOWLEDGE_WARNINGS,
            Right.SET_UP),
    OWNER(
            Right.READ,
            Right.READ_ORDERS,
            Right.WRITE_ORDERS,
            Right.RECORD,
            Right.POST_READINGS,
            Right.ACKNOWLEDGE_WARNINGS,
            Right.SET_UP,
            Right.PEOPLE),
    DEVICE(Right.POST_READINGS),
    /** Nothing yet: the order room fills it. */
    PARTNER;

    private final Set<Right> rights = EnumSet.noneOf(Right.class);

    Role(Right... held) {
        rights.addAll(Set.of(held));
    }

    public boolean holds(Right right) {
        return rights.contains(right);
    }

    public boolean isForKeys() {
        return this == DEVICE || this == PARTNER;
    }

    /** Sales and managers see the whole business, also where they may write at one site only. */
    boolean readsEverySite() {
        return this == SALES || this == MANAGER || this == OWNER;
    }
}
