package rootcast.app.crop.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "crop")
public class CropRow {
    @Id
    public String code;

    public String name;
    public long positionNo;
}
