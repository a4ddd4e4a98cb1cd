package trivet.report.web;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import trivet.deviation.BatchRecord;
import trivet.ledger.Entry;
import trivet.people.People;
import trivet.report.CsvGuard;
import trivet.report.MonthReport;

/** Sheets of cells as CSV by RFC 4180; the records of a report have one row a record, times by ISO 8601 with offset. */
final class CsvSheet {

    private static final List<String> HEAD = List.of("receive_number", "id", "kind", "batch", "claimed_at", "entered_at", "received_at", "person", "initials", "device",
        "device_seq", "instrument", "temperature", "unit", "held_seconds", "verdict", "words", "written_later", "text", "sha256", "clock");

    private CsvSheet() {
    }

    static String of(MonthReport report, People people) {
        Map<String, String> codes = report.batches().stream().collect(Collectors.toMap(BatchRecord::id, BatchRecord::code, (a, b) -> a));
        return of(HEAD, report.days().stream().flatMap(day -> day.entries().stream()).map(entry -> row(entry, codes, report, people)));
    }

    /** The text of a sheet, each cell guarded against being read as a formula. */
    static String of(List<String> head, Stream<List<String>> rows) {
        StringWriter text = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180.builder().setHeader(head.toArray(String[]::new)).get())) {
            for (List<String> row : (Iterable<List<String>>) rows::iterator) {
                printer.printRecord(row.stream().map(CsvGuard::cell).toList());
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static List<String> row(Entry entry, Map<String, String> codes, MonthReport report, People people) {
        var temperature = entry.data().temperature("temperature");
        Object[] cells = {entry.receiveNumber(), entry.id(), entry.kind(), entry.batch().map(id -> codes.getOrDefault(id, id)).orElse(""),
            time(entry.claimedAt(), report), time(entry.enteredAt(), report), time(entry.receivedAt(), report), entry.person(), people.initials(entry.person()),
            entry.device(), entry.deviceSeq(), entry.instrument().orElse(""), temperature.map(t -> t.value().toPlainString()).orElse(""),
            temperature.map(t -> t.scale().letter()).orElse(""), entry.data().decimal("held_seconds").map(h -> h.toPlainString()).orElse(""),
            entry.verdict().text("verdict").orElse(""), entry.verdict().text("words").orElse(""), entry.writtenLater(),
            entry.data().text("reason").or(() -> entry.data().text("note")).or(() -> entry.data().text("text")).or(() -> entry.data().text("what_happened")).orElse(""), entry.sha256(), entry.time().words()};
        return Arrays.stream(cells).map(String::valueOf).toList();
    }

    private static String time(Instant at, MonthReport report) {
        return java.time.format.DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at.atZone(report.site().zone()));
    }
}
