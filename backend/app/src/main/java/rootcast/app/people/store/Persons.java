package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rootcast.app.people.Grant;
import rootcast.app.people.Person;
import rootcast.app.people.Role;

/** People as stored. */
@ApplicationScoped
@Transactional
public class Persons {

    @Inject
    Rows rows;

    @Inject
    Grants grants;

    @Inject
    EntityManager database;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<PersonRow, String> {}

    @ApplicationScoped
    static class Grants implements PanacheRepositoryBase<PersonGrantRow, PersonGrantRow.Id> {}

    public boolean isEmpty() {
        return rows.count() == 0;
    }

    public Optional<Person> named(String name) {
        return rows.findByIdOptional(Person.key(name))
                .map(row -> person(row, grants.list("id.person = ?1 order by id.seq", row.nameKey)));
    }

    public List<Person> all() {
        Map<String, List<PersonGrantRow>> byPerson = grants.list("order by id.person, id.seq").stream()
                .collect(Collectors.groupingBy(row -> row.id.person()));
        return rows.list("order by nameKey").stream()
                .map(row -> person(row, byPerson.getOrDefault(row.nameKey, List.of())))
                .toList();
    }

    /**
     * Keeps others from changing people or keys until the transaction ends, so that two owners cannot remove each other and one name
     * is not given twice. Look again at what was seen before.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void hold() {
        database.find(PeopleTurnRow.class, PeopleTurnRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
    }

    public void save(Person person) {
        String key = Person.key(person.name());
        PersonRow row = rows.findByIdOptional(key).orElseGet(PersonRow::new);
        row.name = person.name();
        row.displayName = person.displayName();
        row.passwordHash = person.passwordHash();
        row.origin = person.origin().name();
        row.active = person.active();
        row.createdAt = person.createdAt();
        if (row.nameKey == null) {
            row.nameKey = key;
            rows.persist(row);
        }
        rows.flush();
        grants.list("id.person", key).forEach(grants::delete);
        grants.flush();
        int seq = 0;
        for (Grant grant : person.grants()) {
            PersonGrantRow granted = new PersonGrantRow();
            granted.id = new PersonGrantRow.Id(key, seq++);
            granted.role = grant.role().name();
            granted.site = grant.site();
            grants.persist(granted);
        }
        grants.flush();
    }

    private static Person person(PersonRow row, List<PersonGrantRow> granted) {
        return new Person(
                row.name,
                row.displayName,
                row.passwordHash,
                Person.Origin.valueOf(row.origin),
                row.active,
                row.createdAt,
                granted.stream()
                        .map(each -> new Grant(Role.valueOf(each.role), each.site))
                        .toList());
    }
}
