package rootcast.app.people.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Grant;
import rootcast.app.people.Role;

/** @param site left out for all sites */
record GrantWire(
        @NotNull Role role, @Nullable @Size(max = 32) String site) {

    static List<Grant> grants(List<GrantWire> wires) {
        return wires.stream().map(each -> new Grant(each.role, each.site)).toList();
    }

    static List<GrantWire> of(List<Grant> grants) {
        return grants.stream()
                .map(each -> new GrantWire(each.role(), each.site()))
                .toList();
    }
}
