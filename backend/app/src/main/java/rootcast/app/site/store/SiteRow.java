package rootcast.app.site.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "site")
public class SiteRow {
    @Id
    public String code;

    public String name;
    public String timeZone;
    public String shipDay;
    public long positionNo;
}
