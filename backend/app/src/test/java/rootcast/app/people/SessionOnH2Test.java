package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class SessionOnH2Test extends SessionContract {}
