package trivet.report;

/** Keeps a cell from being read as a formula by a spreadsheet. */
public final class CsvGuard {

    private CsvGuard() {
    }

    /** The text, with an apostrophe before it when it begins like a formula; a plain number, also a negative one, stays. */
    public static String cell(String text) {
        if (text.isEmpty() || text.matches("-?\\d+([.,]\\d+)?")) {
            return text;
        }
        return "=+-@\t\r\n|".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
