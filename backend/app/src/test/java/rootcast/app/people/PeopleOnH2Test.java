package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class PeopleOnH2Test extends PeopleContract {}
