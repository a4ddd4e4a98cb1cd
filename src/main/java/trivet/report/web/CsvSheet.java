package trivet.report.web;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import trivet.deviation.BatchRecord;
import trivet.ledger.Entry;
import trivet.people.People;
import trivet.report.CsvGuard;
import trivet.report.MonthReport;

/** The records of a report as CSV by RFC 4180: one row a record, times by ISO 8601 with offset. */
final class CsvSheet {

    private static final String[] HEAD = {"receive_number", "id", "kind", "batch", "claimed_at", "entered_at", "received_at", "person", "initials", "device",
        "device_seq", "instrument", "temperature", "unit", "held_seconds", "verdict", "words", "written_later", "text", "sha256"};

    private CsvSheet() {
    }

    static String of(MonthReport report, People people) {
        Map<String, String> codes = report.batches().stream().collect(Collectors.toMap(BatchRecord::id, BatchRecord::code, (a, b) -> a));
        StringWriter text = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180.builder().setHeader(HEAD).get())) {
            for (var day : report.days()) {
                for (Entry entry : day.entries()) {
                    row(printer, entry, codes, report, people);
                }
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static void row(CSVPrinter printer, Entry entry, Map<String, String> codes, MonthReport report, People people) throws IOException {
        var temperature = entry.data().temperature("temperature");
        Object[] cells = {entry.receiveNumber(), entry.id(), entry.kind(), entry.batch().map(id -> codes.getOrDefault(id, id)).orElse(""),
            time(entry.claimedAt(), report), time(entry.enteredAt(), report), time(entry.receivedAt(), report), entry.person(), people.initials(entry.person()),
            entry.device(), entry.deviceSeq(), entry.instrument().orElse(""), temperature.map(t -> t.value().toPlainString()).orElse(""),
            temperature.map(t -> t.scale().letter()).orElse(""), entry.data().decimal("held_seconds").map(h -> h.toPlainString()).orElse(""),
            entry.verdict().text("verdict").orElse(""), entry.verdict().text("words").orElse(""), entry.writtenLater(),
            entry.data().text("reason").or(() -> entry.data().text("note")).or(() -> entry.data().text("text")).or(() -> entry.data().text("what_happened")).orElse(""), entry.sha256()};
        for (Object cell : cells) {
            printer.print(CsvGuard.cell(String.valueOf(cell)));
        }
        printer.println();
    }

    private static String time(Instant at, MonthReport report) {
        return java.time.format.DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at.atZone(report.site().zone()));
    }
}
