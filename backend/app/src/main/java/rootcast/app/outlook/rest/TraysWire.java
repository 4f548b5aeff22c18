package rootcast.app.outlook.rest;

import rootcast.outlook.SaleableTrays;

/** Whole trays once ready; p10 is the low figure. */
public record TraysWire(int p10, int p50, int p90) {

    public static TraysWire of(SaleableTrays trays) {
        return new TraysWire(trays.p10(), trays.p50(), trays.p90());
    }
}
