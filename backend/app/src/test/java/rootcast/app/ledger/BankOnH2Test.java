package rootcast.app.ledger;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BankOnH2Test extends BankContract {}
