package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trivet.FreshDemo;
import trivet.batch.Life;
import trivet.ledger.Ids;

/** Every state of a batch can be reached, and none that is not its end is without a way out, on hold or not. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class LivesTest extends BatchBegun {

    private void reach(Life life) {
        batch = Ids.uuid7(start, RANDOM);
        String oven = life == Life.BEGUN ? "" : ",\"oven\":\"oven-1\"";
        tell("batch-started", "ana", 0, "{\"product\":\"deep-quiche\",\"code\":\"A-1" + life.ordinal() + "\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12" + oven + "}");
        if (life == Life.STRUCK_OUT) {
            tell("struck-out", "ana", 5, "{\"reason\":\"begun twice\"}");
        }
        if (Set.of(Life.COOLING, Life.STORED, Life.SPLIT, Life.GONE, Life.DESTROYED).contains(life)) {
            baked();
        }
        if (life == Life.SPLIT) {
            tell("split", "ana", 60, "{\"parts\":[{\"batch\":\"" + Ids.uuid7(start, RANDOM) + "\",\"code\":\"X-C\",\"trays\":1,\"pieces\":12,\"purpose\":\"cold\"}]}");
        }
        if (life == Life.STORED || life == Life.GONE) {
            tell("cooling-reading", "ana", 130, celsius("6"));
            tell("put-away", "ana", 132, "{\"unit\":\"fridge-1\",\"use_by\":\"2099-01-01\"}");
        }
        if (life == Life.GONE) {
            tell("gone", "ana", 140, "{\"how\":\"sold\"}");
        }
        if (life == Life.DESTROYED) {
            tell("destroyed", "ana", 140, "{\"reason\":\"dropped\"}");
        }
        assertEquals(life, now().life());
    }

    @ParameterizedTest
    @EnumSource(Life.class)
    void every_state_can_be_reached_and_left_or_is_an_end(Life life) {
        reach(life);
        if (EnumSet.of(Life.SPLIT, Life.GONE, Life.DESTROYED, Life.STRUCK_OUT).contains(life)) {
            assertTrue(life.over());
            return;
        }
        assertFalse(now().next().act().equals("none"), "something is to be done next");
        tell("destroyed", "ana", 145, "{\"reason\":\"no longer wanted\"}");
        assertEquals(Life.DESTROYED, now().life());
    }

    @ParameterizedTest
    @EnumSource(value = Life.class, names = {"BEGUN", "BAKING", "COOLING", "STORED"})
    void a_hold_laid_by_a_person_is_ended_by_another_in_every_state(Life life) {
        reach(life);
        String hold = tell("held", "ana", 141, "{\"reason\":\"smells odd\"}");
        assertTrue(now().holds().stream().anyMatch(h -> h.id().equals(hold)));
        tell("released", "ana", 142, "{\"holds\":[\"" + hold + "\"],\"evidence\":\"smelled again\"}");
        assertTrue(now().holds().stream().anyMatch(h -> h.id().equals(hold)), "nobody ends their own hold");
        tell("released", "pat", 143, "{\"holds\":[\"" + hold + "\"],\"evidence\":\"smelled again\"}");
        assertFalse(now().holds().stream().anyMatch(h -> h.id().equals(hold)));
    }

    @Test
    void what_was_destroyed_comes_back_only_by_an_accepted_correction() {
        reach(Life.COOLING);
        String destroyed = tell("destroyed", "ana", 140, "{\"reason\":\"wrong batch\"}");
        String correction = tell("correction", "ana", 141, "{\"of\":\"" + destroyed + "\",\"reason\":\"it was another batch\",\"void\":true}");
        assertEquals(Life.DESTROYED, lifeNow());
        tell("accepted", "pat", 142, "{\"records\":[\"" + correction + "\"]}");
        assertEquals(Life.COOLING, lifeNow());
    }

    private Life lifeNow() {
        return now().life();
    }

    @Test
    void a_struck_out_batch_comes_back_held_when_a_reading_arrives_and_can_still_be_destroyed() {
        reach(Life.STRUCK_OUT);
        tell("cook-reading", "ana", 50, PASSED);
        assertTrue(now().held());
        tell("destroyed", "ana", 60, "{\"reason\":\"begun twice\"}");
        assertEquals(Life.DESTROYED, now().life());
    }
}
