package rootcast.app.whatif;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class WhatIfOnH2Test extends WhatIfContract {}
