package rootcast.app.ledger;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class EntriesOnH2Test extends EntriesContract {}
