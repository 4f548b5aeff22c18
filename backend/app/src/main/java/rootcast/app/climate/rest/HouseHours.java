package rootcast.app.climate.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import rootcast.app.climate.HourlyClimate;
import rootcast.app.site.store.Places;
import rootcast.site.House;

/** Hours of a house, measured or derived as asked for; of a daily light integral one a day, at the site's midnight. */
@ApplicationScoped
class HouseHours {

    @Inject
    HourlyClimate climate;

    @Inject
    Places places;

    List<HourlyClimate.Hour> of(House house, AskedQuantity asked, Instant since, Instant until) {
        return switch (asked.derived()) {
            case NOTHING -> climate.hours(house.code(), asked.sources().get(0), since, until);
            case DEFICIT -> climate.deficits(house.code(), since, until);
            case DEW_POINT -> climate.dewPoints(house.code(), since, until);
            case DAILY_LIGHT ->
                climate.lightOfDays(
                        house.code(), places.site(house.site()).orElseThrow().zone(), since, until);
        };
    }
}
