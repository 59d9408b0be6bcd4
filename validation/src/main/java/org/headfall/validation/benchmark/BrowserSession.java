package org.headfall.validation.benchmark;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A page in chromium, which is asked to evaluate expressions by the Chrome DevTools Protocol. */
final class BrowserSession implements AutoCloseable {

    private static final String ADDRESS = "DevTools listening on ";
    private static final long LONGEST_WAIT = 120;

    private final JsonMapper mapper = new JsonMapper();
    private final Process browser;
    private final Path profile;
    private final Answers answers = new Answers();
    private final WebSocket socket;
    private int asked;

    /** Collects the text of each message; one is awaited at a time. */
    private final class Answers implements WebSocket.Listener {

        private final StringBuilder text = new StringBuilder();
        private int awaited;
        private CompletableFuture<JsonNode> answer = new CompletableFuture<>();

        synchronized CompletableFuture<JsonNode> await(int number) {
            awaited = number;
            answer = new CompletableFuture<>();
            return answer;
        }

        @Override
        public synchronized CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                JsonNode message = mapper.readTree(text.toString());
                text.setLength(0);
                if (message.path("id").asInt(-1) == awaited) {
                    answer.complete(message);
                }
            }
            from.request(1);
            return CompletableFuture.completedFuture(null);
        }
    }

    /** Opens an empty page of 1,280 by 900 pixels. */
    BrowserSession(Path program) throws IOException, InterruptedException {
        profile = Files.createTempDirectory("headfall-bench");
        browser = new ProcessBuilder(
                        program.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--window-size=1280,900",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + profile,
                        "about:blank")
                .redirectErrorStream(true)
                .start();
        HttpClient client = HttpClient.newHttpClient();
        URI pages = URI.create("http://127.0.0.1:" + port() + "/json");
        String list = client.send(HttpRequest.newBuilder(pages).build(), HttpResponse.BodyHandlers.ofString())
                .body();
        String page = mapper.readTree(list)
                .valueStream()
                .filter(target -> target.path("type").asString("").equals("page"))
                .map(target -> target.path("webSocketDebuggerUrl").asString(""))
                .findFirst()
                .orElseThrow(() -> new IOException("chromium opened no page"));
        socket = client.newWebSocketBuilder()
                .buildAsync(URI.create(page), answers)
                .join();
    }

    /** Chromium, if it is on the path. */
    static Optional<Path> onPath() {
        return Stream.of(Optional.ofNullable(System.getenv("PATH")).orElse("").split(java.io.File.pathSeparator))
                .map(directory -> Path.of(directory, "chromium"))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private int port() throws IOException {
        BufferedReader output = browser.inputReader(StandardCharsets.UTF_8);
        for (String line = output.readLine(); line != null; line = output.readLine()) {
            if (line.startsWith(ADDRESS)) {
                return URI.create(line.substring(ADDRESS.length()).strip()).getPort();
            }
        }
        throw new IOException("chromium ended before it could be reached");
    }

    private JsonNode ask(String method, String name, Object value) throws IOException {
        int number = ++asked;
        String text = mapper.writeValueAsString(mapper.createObjectNode()
                .put("id", number)
                .put("method", method)
                .set(
                        "params",
                        mapper.createObjectNode()
                                .put("awaitPromise", true)
                                .put("returnByValue", true)
                                .putPOJO(name, value)));
        CompletableFuture<JsonNode> answer = answers.await(number);
        socket.sendText(text, true).join();
        try {
            return answer.get(LONGEST_WAIT, TimeUnit.SECONDS);
        } catch (InterruptedException
                | java.util.concurrent.ExecutionException
                | java.util.concurrent.TimeoutException e) {
            throw new IOException("chromium did not answer " + method, e);
        }
    }

    /** Opens a file. */
    void open(Path page) throws IOException {
        ask("Page.navigate", "url", page.toUri().toString());
    }

    /** Value of a JavaScript expression; of a promise, what it resolves to. */
    double evaluate(String expression) throws IOException {
        JsonNode answer = ask("Runtime.evaluate", "expression", expression).path("result");
        if (answer.has("exceptionDetails")) {
            throw new IOException("the page failed: " + answer.path("exceptionDetails"));
        }
        return answer.path("result").path("value").asDouble(Double.NaN);
    }

    @Override
    public void close() throws IOException {
        socket.abort();
        browser.destroy();
        try {
            browser.waitFor(LONGEST_WAIT, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        try (Stream<Path> files = Files.walk(profile)) {
            files.sorted(Comparator.reverseOrder())
                    .forEach(file -> file.toFile().delete());
        }
    }
}
