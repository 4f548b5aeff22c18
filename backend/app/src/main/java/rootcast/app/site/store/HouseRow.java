package rootcast.app.site.store;

import jakarta.persistence.Column;
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

    @Column(name = "medium_setpoint_c")
    public Double mediumSetpointC;

    public long positionNo;
}
