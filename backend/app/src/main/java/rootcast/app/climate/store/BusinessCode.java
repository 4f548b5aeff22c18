package rootcast.app.climate.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** What this business is called at a broker that it may share with others: drawn when its database was made. */
@ApplicationScoped
public class BusinessCode {

    @Inject
    EntityManager database;

    @Transactional
    public String code() {
        return (String)
                database.createNativeQuery("select code from business_code").getSingleResult();
    }
}
