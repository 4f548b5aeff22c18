package rootcast.app.climate;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import rootcast.climate.QualityFlag;

/** A flag and where it belongs. */
public record FlagOfHouse(HouseQuantity of, QualityFlag flag) {

    /** The same for the same sensor, rule and moment. */
    public UUID id() {
        return id(of, flag.key());
    }

    static UUID id(HouseQuantity of, QualityFlag.Key key) {
        String what = String.join(
                "|",
                of.house(),
                of.quantity().wireName(),
                key.sensor(),
                key.kind().wireName(),
                key.at().toString());
        return UUID.nameUUIDFromBytes(what.getBytes(StandardCharsets.UTF_8));
    }
}
