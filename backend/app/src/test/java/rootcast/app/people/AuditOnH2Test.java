package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class AuditOnH2Test extends AuditContract {}
