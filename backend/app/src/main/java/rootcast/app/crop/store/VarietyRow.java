package rootcast.app.crop.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "variety")
public class VarietyRow {
    @Id
    public String code;

    public String crop;
    public String name;
    public long positionNo;
}
