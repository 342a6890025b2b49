package packpot.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.Socket;
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
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import packpot.Demo;
import packpot.KennelScenarios;
import packpot.report.JsonReport;

/** The server of the page as programs meet it: who is let in, what is saved, and that its plans are the command line's. */
class PageServerTest {
    private static final JsonMapper JSON = new JsonMapper();
    private static final String PAGE = "0123456789abcdef";

    @TempDir
    Path folder;

    private PageServer server;
    private String token;
    private int port;
    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeEach
    void start() throws IOException {
        Files.copy(Demo.file("tiny-freezer"), folder.resolve("home.json"));
        server = PageServer.start(folder, 0, Demo.knowledge());
        URI address = server.address(null);
        port = address.getPort();
        token = address.getQuery().substring("token=".length());
    }

    @AfterEach
    void stop() {
        server.close();
    }

    private HttpResponse<String> send(String method, String path, String body, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .method(method, HttpRequest.BodyPublishers.ofString(body));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private HttpResponse<String> ask(String method, String path, String body) throws Exception {
        return send(method, path, body, "X-Packpot-Token", token);
    }

    private static String text(String value) {
        return URLEncoder.encode(value, StandardCharsets.UTF_8);
    }

    private List<JsonNode> lines(String kind, String scenario) throws Exception {
        ObjectNode question = JSON.createObjectNode().put("name", "home.json").put("scenario", scenario);
        HttpResponse<String> response =
                ask("POST", "/api/" + kind + "?page=" + PAGE + "-" + kind, JSON.writeValueAsString(question));
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        List<JsonNode> lines = new ArrayList<>();
        for (String line : response.body().split("\n")) {
            lines.add(JSON.readTree(line));
        }
        return lines;
    }

    private static JsonNode line(List<JsonNode> lines, String field) {
        return lines.stream()
                .filter(line -> line.has(field))
                .reduce((first, last) -> last)
                .orElseThrow(() -> new AssertionError("no line has " + field + ": " + lines));
    }

    private String home() throws IOException {
        return Files.readString(folder.resolve("home.json"));
    }

    /** Raw, since the JDK's client chooses the host itself. */
    private String raw(String head) throws IOException {
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), port)) {
            OutputStream out = socket.getOutputStream();
            out.write((head + "\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.UTF_8));
            out.flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void itListensOnLoopbackAlone() throws IOException {
        List<InetAddress> others = java.net.NetworkInterface.networkInterfaces()
                .flatMap(java.net.NetworkInterface::inetAddresses)
                .filter(address -> !address.isLoopbackAddress())
                .toList();
        for (InetAddress other : others) {
            assertThatThrownBy(() -> new Socket(other, port).close()).isInstanceOf(IOException.class);
        }
        new Socket(InetAddress.getByName("127.0.0.1"), port).close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"evil.example", "evil.example:80", "127.0.0.1", "127.0.0.1:1", "[::1]:80", ""})
    void anotherHostIsRefused(String host) throws IOException {
        assertThat(raw("GET /?token=" + token + " HTTP/1.1\r\nHost: " + host)).startsWith("HTTP/1.1 403");
    }

    @Test
    void itsOwnHostIsNot() throws IOException {
        assertThat(raw("GET /?token=" + token + " HTTP/1.1\r\nHost: 127.0.0.1:" + port))
                .startsWith("HTTP/1.1 200")
                .contains("default-src 'none'", "frame-ancestors 'none'");
        assertThat(raw("GET /?token=" + token + " HTTP/1.1\r\nHost: localhost:" + port))
                .startsWith("HTTP/1.1 200");
    }

    @Test
    void aRequestOfAnotherPageIsRefused() throws Exception {
        for (String[] header : new String[][] {
            {"Origin", "http://evil.example"},
            {"Origin", "null"},
            {"Origin", "https://127.0.0.1:" + port},
            {"Sec-Fetch-Site", "cross-site"},
            {"Sec-Fetch-Site", "same-site"}
        }) {
            HttpResponse<String> response =
                    send("POST", "/api/plan?page=" + PAGE, "{}", "X-Packpot-Token", token, header[0], header[1]);
            assertThat(response.statusCode()).as(String.join(": ", header)).isEqualTo(403);
        }
    }

    @Test
    void withoutTheTokenNothingIsTold() throws Exception {
        for (String path : new String[] {"/", "/api/start", "/api/file?name=home.json", "/sheets.html?plan=x"}) {
            assertThat(send("GET", path, "").statusCode()).as(path).isEqualTo(403);
            assertThat(send("GET", path, "", "X-Packpot-Token", token.replace('0', '1') + "x")
                            .statusCode())
                    .isEqualTo(403);
        }
        assertThat(send("GET", "/", "").body()).doesNotContain("page.js");
    }

    @Test
    void everyStartHasATokenOfItsOwn() throws Exception {
        try (PageServer other = PageServer.start(folder, 0, Demo.knowledge())) {
            assertThat(other.address(null).getQuery()).isNotEqualTo("token=" + token);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../home.json",
                "/etc/passwd",
                "a/b.json",
                "..\\home.json",
                ".hidden.json",
                "home.txt",
                "",
                "nul\u0000.json",
                "home.json/"
            })
    void onlyFilesOfTheFolderAreRead(String name) throws Exception {
        assertThat(ask("GET", "/api/file?name=" + text(name), "").statusCode()).isEqualTo(400);
        assertThat(ask("PUT", "/api/file?page=" + PAGE + "&base=&name=" + text(name), "{}")
                        .statusCode())
                .isEqualTo(400);
        assertThat(ask("PUT", "/api/draft?page=" + PAGE + "&name=" + text(name), "{}")
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    void aLinkOutOfTheFolderIsNotFollowed(@TempDir Path elsewhere) throws Exception {
        Path secret = Files.writeString(elsewhere.resolve("secret.json"), "{\"secret\": 1}");
        Files.createSymbolicLink(folder.resolve("link.json"), secret);
        assertThat(ask("GET", "/api/start", "").body()).doesNotContain("link.json");
        assertThat(ask("GET", "/api/file?name=link.json", "").statusCode()).isEqualTo(403);
        assertThat(ask("PUT", "/api/file?page=" + PAGE + "&base=&name=link.json", "{}")
                        .statusCode())
                .isEqualTo(403);
        assertThat(secret).hasContent("{\"secret\": 1}");
    }

    @Test
    void programFilesAreServedByNameAlone() throws Exception {
        assertThat(send("GET", "/page/page.js", "").statusCode()).isEqualTo(200);
        for (String path :
                new String[] {"/page/../build.properties", "/page/%2e%2e/build.properties", "/page/page.html.txt"}) {
            assertThat(send("GET", path, "").statusCode()).as(path).isIn(403, 404);
        }
    }

    @Test
    void aBodyTooLargeIsRefused() throws Exception {
        String large = "x".repeat(Api.MOST_BYTES + 1);
        assertThat(ask("PUT", "/api/file?page=" + PAGE + "&base=&name=new.json", large)
                        .statusCode())
                .isEqualTo(413);
        assertThat(folder.resolve("new.json")).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "{\"scenario\": 3}", "\u0000"})
    void nonsenseIsToldAsSuch(String body) throws Exception {
        assertThat(ask("POST", "/api/plan?page=" + PAGE, body).statusCode()).isEqualTo(400);
    }

    @Test
    void aPortInUseIsTold() {
        assertThatThrownBy(
                        () -> PageServer.start(folder, port, Demo.knowledge()).close())
                .isInstanceOf(BindException.class);
    }

    @Test
    void theLaterSaveIsToldAndNothingIsLost() throws Exception {
        JsonNode opened =
                JSON.readTree(ask("GET", "/api/file?name=home.json", "").body());
        String base = opened.path("version").asText();
        String mine = opened.path("text").asText().replace("\"days\"", " \"days\"");
        HttpResponse<String> first = ask("PUT", "/api/file?name=home.json&page=aaaaaaaa&base=" + base, mine);
        assertThat(first.statusCode()).isEqualTo(200);
        HttpResponse<String> second = ask("PUT", "/api/file?name=home.json&page=bbbbbbbb&base=" + base, "{}");
        assertThat(second.statusCode()).isEqualTo(409);
        assertThat(second.body()).contains("was changed since it was opened here");
        assertThat(home()).isEqualTo(mine);
        String now = JSON.readTree(second.body()).path("version").asText();
        assertThat(ask("PUT", "/api/file?name=home.json&page=bbbbbbbb&base=" + now, "{\"a\": 1}")
                        .statusCode())
                .as("written over when asked")
                .isEqualTo(200);
        assertThat(home()).isEqualTo("{\"a\": 1}");
        assertThat(ask("PUT", "/api/file?name=home.json&page=cccccccc&base=", "{}")
                        .statusCode())
                .as("a new file takes no name that is taken")
                .isEqualTo(409);
    }

    @Test
    void ofManySavesAtOnceOneWins() throws Exception {
        String base = JSON.readTree(ask("GET", "/api/file?name=home.json", "").body())
                .path("version")
                .asText();
        try (PageServer other = PageServer.start(folder, 0, Demo.knowledge())) {
            URI second = other.address(null);
            List<CompletableFuture<Integer>> saves = new ArrayList<>();
            for (int i = 0; i < 24; i++) {
                boolean here = i % 2 == 0;
                HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:"
                                + (here ? port : second.getPort()) + "/api/file?name=home.json&page=aaaaaaaa&base="
                                + base))
                        .header(
                                "X-Packpot-Token",
                                here ? token : second.getQuery().substring("token=".length()))
                        .PUT(HttpRequest.BodyPublishers.ofString("{\"from\": " + i + "}"))
                        .build();
                saves.add(client.sendAsync(request, HttpResponse.BodyHandlers.ofString())
                        .thenApply(HttpResponse::statusCode));
            }
            List<Integer> codes = saves.stream().map(CompletableFuture::join).toList();
            assertThat(codes).filteredOn(code -> code == 200).hasSize(1);
            assertThat(codes).filteredOn(code -> code == 409).hasSize(23);
        }
        assertThat(JSON.readTree(home()).has("from")).isTrue();
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> String.valueOf(file.getFileName()))).noneMatch(name -> name.endsWith(".tmp"));
        }
    }

    @Test
    void unsavedWorkIsThereAfterTheServerWasStartedAnew() throws Exception {
        assertThat(ask("PUT", "/api/draft?name=home.json&page=" + PAGE, "{\"base\": \"x\", \"text\": \"half\"}")
                        .statusCode())
                .isEqualTo(200);
        server.close();
        server = PageServer.start(folder, 0, Demo.knowledge());
        port = server.address(null).getPort();
        token = server.address(null).getQuery().substring("token=".length());
        JsonNode opened =
                JSON.readTree(ask("GET", "/api/file?name=home.json", "").body());
        assertThat(opened.at("/drafts/0/page").asText()).isEqualTo(PAGE);
        assertThat(opened.at("/drafts/0/draft").asText()).contains("half");
        assertThat(opened.path("text").asText()).isEqualTo(home());
        ask("DELETE", "/api/draft?name=home.json&page=" + PAGE, "");
        opened = JSON.readTree(ask("GET", "/api/file?name=home.json", "").body());
        assertThat(opened.path("drafts")).isEmpty();
    }

    @Test
    void aBrokenScenarioIsToldFaultByFault() throws Exception {
        List<JsonNode> lines = lines("plan", home().replace("\"weight\"", "\"wieght\""));
        assertThat(line(lines, "faults").path("faults").findValuesAsText("path"))
                .contains("dogs[0].weight", "dogs[0].wieght");
        assertThat(line(lines("plan", "{ no json"), "faults").toString()).contains("is not valid JSON");
        assertThat(line(lines("plan", "[]"), "faults").path("faults")).isNotEmpty();
    }

    @Test
    void theEnergyOfADogIsToldWhileTheRestIsUnfinished() throws Exception {
        JsonNode dogs = line(
                        lines(
                                "plan",
                                "{\"packpot\": 1, \"dogs\": [{\"name\": \"Fen\", \"weight\": \"10 kg\", \"age\": \"4 years\"},"
                                        + " {\"name\": \"Ash\"}], \"pantry\": []}"),
                        "dogs")
                .path("dogs");
        // FEDIAF 2024, table VII-6: 110 kcal per kg^0.75 for moderate activity; 10^0.75 = 5.6234.
        assertThat(dogs.path(0).path("kcalPerDay").doubleValue())
                .isCloseTo(618.6, org.assertj.core.data.Offset.offset(0.1));
        assertThat(dogs.path(1)).isEmpty();
    }

    @Test
    void thePlanIsThatOfTheCommandLine() throws Exception {
        Demo.Planned planned = Demo.planned("tiny-freezer");
        JsonNode expected = JSON.readTree(JsonReport.plan(planned.plan(), planned.verdict()));
        JsonNode answer = line(lines("plan", home()), "plan");
        Document html = Jsoup.parse(answer.path("html").asText());
        int compared = 0;
        for (Element cell : html.select("[data-of^=/plan/], [data-of^=/audit/]")) {
            JsonNode figure = expected.at(cell.attr("data-of"));
            assertThat(figure.isMissingNode()).as(cell.attr("data-of")).isFalse();
            String first = cell.text().replaceAll("[^0-9.]*([0-9][0-9,]*(\\.[0-9]+)?).*", "$1");
            boolean plain = cell.text().matches("\\$?[0-9,]+(\\.[0-9]+)?( g| %)?");
            if (figure.isNumber() && plain && !cell.hasAttr("data-dry")) {
                double told = Double.parseDouble(first.replace(",", ""));
                double value = figure.doubleValue() * (cell.hasAttr("data-percent") ? 100 : 1);
                int decimals = first.contains(".") ? first.length() - first.indexOf('.') - 1 : 0;
                assertThat(told)
                        .as(cell.attr("data-of"))
                        .isCloseTo(value, org.assertj.core.data.Offset.offset(0.5000001 * Math.pow(10, -decimals)));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(100);
        assertThat(answer.path("summary").asText())
                .isEqualTo(String.format(
                        java.util.Locale.US,
                        "€%.2f a day",
                        planned.plan().cost().perDay()));
        HttpResponse<String> sheets = send(
                "GET",
                "/sheets.html?token=" + token + "&plan=" + answer.path("plan").asText(),
                "");
        assertThat(sheets.body()).contains("Shopping list", "For the veterinarian");
        assertThat(sheets.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("sandbox");
    }

    /** As many dogs as are still planned each for itself, and many foods: nobody waits for the end of that search. */
    private static String slow() throws IOException {
        return Files.readString(KennelScenarios.file(24, 150));
    }

    private CompletableFuture<String> slowPlan() throws IOException {
        ObjectNode question = JSON.createObjectNode().put("name", "home.json").put("scenario", slow());
        HttpRequest request = HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + port + "/api/plan?page=" + PAGE + "-plan"))
                .header("X-Packpot-Token", token)
                .POST(HttpRequest.BodyPublishers.ofString(JSON.writeValueAsString(question)))
                .build();
        return client.sendAsync(request, HttpResponse.BodyHandlers.ofString()).thenApply(HttpResponse::body);
    }

    @Test
    void theNewestQuestionOfAPageEndsTheOneBefore() throws Exception {
        CompletableFuture<String> first = slowPlan();
        Thread.sleep(700);
        assertThat(first).isNotDone();
        List<JsonNode> second = lines("plan", home());
        assertThat(line(second, "plan").path("plan").asText()).isNotEmpty();
        assertThat(first.join()).contains("\"cancelled\":true").doesNotContain("\"plan\":");
    }

    @Test
    void whatIsCancelledEnds() throws Exception {
        CompletableFuture<String> answer = slowPlan();
        Thread.sleep(700);
        assertThat(answer).isNotDone();
        ask("POST", "/api/cancel?page=" + PAGE + "-plan", "");
        assertThat(answer.join()).contains("\"cancelled\":true");
    }

    @Test
    void aServerStoppedInTheMiddleOfASearchEndsAtOnceAndLosesNothing() throws Exception {
        String before = home();
        CompletableFuture<String> answer = slowPlan();
        Thread.sleep(700);
        assertThat(answer).isNotDone();

        long stopped = System.nanoTime();
        server.close();
        // The page is told that it is cancelled, or sees the connection end.
        assertThat(answer.handle((body, fault) -> fault != null || !body.contains("\"plan\":"))
                        .get(10, TimeUnit.SECONDS))
                .isTrue();
        assertThat((System.nanoTime() - stopped) / 1e9).isLessThan(10);
        assertThat(home()).isEqualTo(before);
        while (isSearching()) {
            assertThat((System.nanoTime() - stopped) / 1e9).isLessThan(10);
            Thread.sleep(50);
        }
    }

    private static boolean isSearching() {
        return Thread.getAllStackTraces().values().stream()
                .flatMap(Arrays::stream)
                .anyMatch(frame -> frame.getClassName().startsWith("packpot.search."));
    }
}
