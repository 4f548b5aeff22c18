package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class KeysOnH2Test extends KeysContract {}
