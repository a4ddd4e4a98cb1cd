package trivet.report.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Against the tables of Unicode: Arabic Presentation Forms-B (FE70 to FEFF), and the ligature of lam and alef; read in the names of the characters. */
class ArabicLettersTest {

    @Test
    void letters_join_as_their_neighbours_ask() {
        assertEquals("ARABIC LETTER BEH INITIAL FORM", Character.getName(ArabicLetters.joined("بيت").charAt(0)));
        assertEquals("ARABIC LETTER YEH MEDIAL FORM", Character.getName(ArabicLetters.joined("بيت").charAt(1)));
        assertEquals("ARABIC LETTER TEH FINAL FORM", Character.getName(ArabicLetters.joined("بيت").charAt(2)));
        assertEquals("ARABIC LIGATURE LAM WITH ALEF ISOLATED FORM", Character.getName(ArabicLetters.joined("لا").charAt(0)));
    }

    @Test
    void other_scripts_stay_and_isolates_become_embeddings() {
        assertEquals("<fo:block>Żur 8 °C</fo:block>", ArabicLetters.joined("<fo:block>Żur 8 °C</fo:block>"));
        assertEquals("\u202a8 °C\u202c", ArabicLetters.joined("من \u20668 °C\u2069").substring(3));
    }
}
