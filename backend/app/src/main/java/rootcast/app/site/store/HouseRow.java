package rootcast.app.site.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "house")
public class HouseRow {
    @Id
    public String code;

    public String site;
    public String name;
    public Double mediumSetpointC;
    public long positionNo;
}
