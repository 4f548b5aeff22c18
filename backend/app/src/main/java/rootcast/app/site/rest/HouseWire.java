package rootcast.app.site.rest;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;
import rootcast.app.site.Code;
import rootcast.site.House;

/**
 * A house as it is sent.
 *
 * @param mediumSetpointC bottom heat set-point, °C, 0 to 40; none if the house has no bottom heat
 */
record HouseWire(
        @Code String code,
        @Code String site,
        @NotBlank @Size(max = 120) String name,
        @Nullable @DecimalMin("0") @DecimalMax("40") Double mediumSetpointC) {

    static HouseWire of(House house) {
        return new HouseWire(house.code(), house.site(), house.name(), house.mediumSetpointC());
    }

    House house() {
        return new House(code, site, name.strip(), mediumSetpointC);
    }
}
