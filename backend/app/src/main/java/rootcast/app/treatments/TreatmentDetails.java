package rootcast.app.treatments;

import org.jspecify.annotations.Nullable;

/**
 * What a record of a treatment has to say besides, where the law of the place asks for it. Nothing of it is computed.
 *
 * @param target             the pest, disease or effect it was for
 * @param totalUsed          product used in all, with its unit, in the reader's own words
 * @param areaM2             the area treated
 * @param registrationNumber of the product, as on its label
 * @param licenceNumber      of who applied it
 * @param weather            wind, temperature and the like at the time
 */
public record TreatmentDetails(
        @Nullable String target,
        @Nullable String totalUsed,
        @Nullable Double areaM2,
        @Nullable String registrationNumber,
        @Nullable String licenceNumber,
        @Nullable String weather) {}
