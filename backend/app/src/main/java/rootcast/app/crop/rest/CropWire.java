package rootcast.app.crop.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;

/** A crop as it is sent. */
record CropWire(
        @Code String code,
        @NotBlank @Size(max = 120) String name,
        @NotNull @Valid ProfileWire profile) {

    static CropWire of(SourcedCrop sourced) {
        return new CropWire(sourced.crop().code(), sourced.crop().name(), ProfileWire.of(sourced));
    }

    /** @param before the profile in force; what is not sent of spreads and rates stays as it is there */
    SourcedCrop sourcedCrop(Optional<CropProfile> before) {
        try {
            CropProfile checked = profile.checked(before);
            return new SourcedCrop(new Crop(code, name.strip(), checked), 0, profile.sources(), profile.note());
        } catch (IllegalArgumentException refused) {
            throw Problem.notAllowed("profile", code, refused.getMessage());
        }
    }
}
