package rootcast.app.availability.rest;

import rootcast.availability.Share;

/** Trays of one batch that serve a promise. */
public record LotShareWire(String batch, int trays) {
    public static LotShareWire of(Share share) {
        return new LotShareWire(share.batch(), share.trays());
    }
}
