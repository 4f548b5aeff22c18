package rootcast.app.ledger;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class RefusedEntriesOnH2Test extends RefusedEntriesContract {}
