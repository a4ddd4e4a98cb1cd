package trivet.sign;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;

/** The signs against values computed with SciPy 1.17, and Benjamini and Hochberg's own example. */
class SignsTest {

    @Test
    void last_digits() {
        Signs.ChiSquare odd = Signs.lastDigits(new int[] {28, 5, 6, 4, 7, 26, 8, 5, 6, 5});
        assertEquals(73.6, odd.statistic(), 1e-9);
        assertEquals(2.984719e-12, odd.probability(), 1e-15);
        Signs.ChiSquare even = Signs.lastDigits(new int[] {12, 9, 8, 11, 10, 13, 9, 10, 7, 11});
        assertEquals(.964295, even.probability(), 1e-6);
        assertFalse(Signs.digitsTestable(new double[] {3.0, 3.1}, 0.1));
    }

    @Test
    void runs_of_one_value_and_heaps() {
        assertEquals(.02392763, Signs.runOfSame(60, 5, .15), 1e-8);
        assertEquals(.09074986, Signs.runOfSame(60, 6, .30), 1e-8);
        assertEquals(.005357, Signs.atLeast(50, 9, 4.0 / 60), 1e-6);
    }

    @Test
    void intervals_that_are_too_regular() {
        assertEquals(4.966e-08, Signs.tooRegular(new double[] {60, 60, 61, 60, 60, 59, 60, 60, 60, 61}, 5), 1e-10);
    }

    @Test
    void false_alarms_are_controlled() {
        // Benjamini and Hochberg, J. R. Stat. Soc. B 57 (1995), 15 ordered p values of section 4.1, from memory: the first four stand out at 0.05
        double[] p = {.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1.0000};
        boolean[] out = Signs.standOut(p, 0.05);
        boolean[] expected = new boolean[15];
        for (int i = 0; i < 4; i++) {
            expected[i] = true;
        }
        assertArrayEquals(expected, out);
    }
}
