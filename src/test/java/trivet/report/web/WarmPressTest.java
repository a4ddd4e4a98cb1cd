package trivet.report.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;

/** The paper that nobody asked for is a real one. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class WarmPressTest {

    private static final int A_PAGE = 10_000;
    @Inject
    WarmPress warm;

    @Test
    void a_plan_of_the_demo_is_printed_without_a_request() {
        assertTrue(warm.print() > A_PAGE);
    }
}
