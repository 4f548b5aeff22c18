package rootcast.app.site.store;

import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import rootcast.site.House;
import rootcast.site.Site;

/** Rows to the core's words and back. */
@Mapper
interface SiteMapper {

    @Mapping(target = "zone", expression = "java(java.time.ZoneId.of(row.timeZone))")
    Site site(SiteRow row);

    @Mapping(target = "timeZone", expression = "java(site.zone().getId())")
    SiteRow row(Site site, long positionNo);

    House house(HouseRow row);

    HouseRow row(House house, long positionNo);
}
