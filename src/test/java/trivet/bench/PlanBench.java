package trivet.bench;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import trivet.flow.Step;
import trivet.flow.draw.FlowDrawing;
import trivet.form.Parts;
import trivet.start.Service;
import trivet.study.Examples;
import trivet.study.Proposals;
import trivet.study.Study;
import trivet.study.Study.Hazard;
import trivet.study.file.StudyFile;

/** A plan of 40 steps and 150 hazards: its pages from the running service, its layout, its PDF. Medians of 15 after warming up; see src/doc/measurements.md. */
public final class PlanBench {

    private PlanBench() {
    }

    private static Study large() {
        Study quiche = Examples.study("deep-quiche");
        List<Step> steps = new ArrayList<>(quiche.steps());
        for (int i = steps.size(); i < 40; i++) {
            steps = new ArrayList<>(trivet.flow.FlowEdits.insertAfter(steps, i % 3 == 0 ? "pastry" : i % 3 == 1 ? "custard" : "de-tin", Step.named("more-" + i, "One more usual step " + i, i % 2 == 0 ? "mix-filling" : "weigh")));
        }
        Study study = quiche.with("product", "large-plan").with("title", "Large plan").with("steps", steps);
        List<Hazard> hazards = new ArrayList<>(study.hazards());
        for (Proposals.Proposal proposal : new Proposals(study, Examples.KNOWLEDGE).waiting()) {
            hazards.add(Parts.with(Parts.with(Parts.with(study.hazard("bake-salmonella").orElseThrow(), "id", proposal.step() + "-" + proposal.hazard().id()), "step", proposal.step()), "kind", proposal.hazard().id()));
        }
        for (int i = hazards.size(); i < 150; i++) {
            hazards.add(Parts.with(Parts.with(study.hazard("bake-salmonella").orElseThrow(), "id", "more-" + i), "title", "One more hazard " + i));
        }
        return study.with("hazards", hazards.subList(0, 150));
    }

    private static double median(int warm, int runs, Supplier<Object> work) {
        for (int i = 0; i < warm; i++) {
            work.get();
        }
        double[] ms = new double[runs];
        for (int i = 0; i < runs; i++) {
            long start = System.nanoTime();
            work.get();
            ms[i] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(ms);
        return ms[runs / 2];
    }

    /** Prints the medians. */
    public static void main(String[] args) throws Exception {
        Study study = large();
        FlowDrawing.Marks marks = new FlowDrawing.Marks(id -> id, id -> "", id -> "");
        System.out.printf("layout and drawing of 40 steps: %.1f ms (goal 50)%n", median(30, 15, () -> FlowDrawing.svg(study.flow(Examples.KNOWLEDGE), "x", marks)));
        System.out.printf("open points of 40 steps and 150 hazards: %.1f ms%n", median(30, 15, () -> Examples.open(study)));
        Path data = Files.createTempDirectory("plan-bench");
        try (Service service = Service.start(data, "-Dtrivet.demo=true")) {
            HttpClient client = HttpClient.newBuilder().cookieHandler(new java.net.CookieManager()).followRedirects(HttpClient.Redirect.NORMAL).build();
            get(client, service.address() + "/");
            post(client, service.address() + "/session/owner", "person=olive&password=thornfold-demo");
            post(client, service.address() + "/owner/plans", "file=" + URLEncoder.encode(StudyFile.write(study), StandardCharsets.UTF_8));
            for (String page : List.of("", "/hazards", "/flow?step=bake", "/part/controls?item=cook")) {
                System.out.printf("page%s: %.0f ms (goal 200)%n", page, median(20, 15, () -> get(client, service.address() + "/owner/plans/large-plan" + page)));
            }
            Thread.sleep(15_000);
            System.out.printf("PDF, the first, half a minute after the start: %.0f ms, then %.0f ms (goal 3000)%n", median(0, 1, () -> get(client, service.address() + "/owner/plans/large-plan.pdf")), median(2, 5, () -> get(client, service.address() + "/owner/plans/large-plan.pdf")));
        }
    }

    private static byte[] get(HttpClient client, String address) {
        return send(client, HttpRequest.newBuilder(URI.create(address)).build());
    }

    private static byte[] post(HttpClient client, String address, String form) {
        return send(client, HttpRequest.newBuilder(URI.create(address)).header("Content-Type", "application/x-www-form-urlencoded").header("Sec-Fetch-Site", "same-origin").POST(HttpRequest.BodyPublishers.ofString(form)).build());
    }

    private static byte[] send(HttpClient client, HttpRequest request) {
        try {
            HttpResponse<byte[]> answer = client.send(request, HttpResponse.BodyHandlers.ofByteArray());
            if (answer.statusCode() != 200) {
                throw new IllegalStateException(request.uri() + " answered " + answer.statusCode() + " " + new String(answer.body(), StandardCharsets.UTF_8).replaceAll("\\s+", " ").substring(0, 300));
            }
            return answer.body();
        } catch (java.io.IOException | InterruptedException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
