package rootcast.app.crop.rest;

import jakarta.validation.constraints.NotNull;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.crop.TrayFormat;
import rootcast.saying.FaultyValue;

/** A tray format as it is sent; outside size in mm. */
record TrayFormatWire(
        @Code String code,
        @NotNull Integer cells,
        @NotNull Integer saleCount,
        @NotNull Integer lengthMm,
        @NotNull Integer widthMm) {

    static TrayFormatWire of(TrayFormat format) {
        return new TrayFormatWire(
                format.code(), format.cells(), format.saleCount(), format.lengthMm(), format.widthMm());
    }

    TrayFormat trayFormat() {
        try {
            return new TrayFormat(code, cells, saleCount, lengthMm, widthMm);
        } catch (FaultyValue wrong) {
            throw Problem.notAllowed(wrong);
        }
    }
}
