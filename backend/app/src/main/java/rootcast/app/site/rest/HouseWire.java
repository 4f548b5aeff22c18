package rootcast.app.site.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;
import rootcast.app.site.Code;
import rootcast.crop.Stage;
import rootcast.outlook.UsualMove;
import rootcast.site.House;

/**
 * A house as it is sent.
 *
 * @param mediumSetpointC bottom heat set-point, °C, 0 to 40; none if the house has no bottom heat
 * @param next            where its batches usually go on to; none if they stay until they ship
 */
record HouseWire(
        @Code String code,
        @Code String site,
        @NotBlank @Size(max = 120) String name,
        @Nullable @DecimalMin("0") @DecimalMax("40") Double mediumSetpointC,
        @Nullable @Valid NextHouse next) {

    /**
     * @param house   code of another house of the site
     * @param onceReached what a batch has reached when it is carried there
     */
    record NextHouse(@Code String house, @NotNull Reached onceReached) {}

    enum Reached {
        CALLUS,
        ROOT
    }

    static HouseWire of(House house, @Nullable UsualMove move) {
        return new HouseWire(
                house.code(),
                house.site(),
                house.name(),
                house.mediumSetpointC(),
                move == null
                        ? null
                        : new NextHouse(
                                move.to(), Reached.valueOf(move.reached().name())));
    }

    @Nullable
    UsualMove move() {
        return next == null
                ? null
                : new UsualMove(Stage.valueOf(next.onceReached().name()), next.house());
    }

    House house() {
        return new House(code, site, name.strip(), mediumSetpointC);
    }
}
