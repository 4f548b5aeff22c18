package rootcast.app.ledger;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class GuardsOnH2Test extends GuardsContract {}
