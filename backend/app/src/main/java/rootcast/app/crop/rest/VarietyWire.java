package rootcast.app.crop.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import rootcast.app.site.Code;
import rootcast.crop.Variety;

/** A variety as it is sent. */
record VarietyWire(
        @Code String code,
        @Code String crop,
        @NotBlank @Size(max = 160) String name) {

    static VarietyWire of(Variety variety) {
        return new VarietyWire(variety.code(), variety.crop(), variety.name());
    }

    Variety variety() {
        return new Variety(code, crop, name.strip());
    }
}
