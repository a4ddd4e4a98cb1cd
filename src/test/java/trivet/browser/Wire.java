package trivet.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The wire between a tablet and the service: it can be cut, be slow and lose connections, swallow the service's answer to records that were already
 * taken in, and carry another version of the screens.
 */
public final class Wire implements AutoCloseable {

    private final ServerSocket door;
    private final int service;
    private volatile double loss;
    private volatile int delayMs;
    private volatile String build;
    private volatile String missing;
    private final Random random = new Random(20);
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private volatile boolean cut;
    private final AtomicInteger swallow = new AtomicInteger();
    private final AtomicLong carried = new AtomicLong();

    public Wire(int service) throws IOException {
        this.service = service;
        this.door = new ServerSocket();
        door.bind(new InetSocketAddress(InetAddress.getByName("localhost"), 0));
        Thread listener = new Thread(this::listen, "wire");
        listener.setDaemon(true);
        listener.start();
    }

    public String address() {
        return "http://localhost:" + door.getLocalPort();
    }

    /** Cuts the wire, or joins it again. */
    public void cut(boolean now) {
        cut = now;
        if (now) {
            open.forEach(Wire::close);
        }
    }

    /** A share of the connections is lost, half of them before and half after the service was asked, and each way takes so long. */
    public void rough(double share, int ms) {
        loss = share;
        delayMs = ms;
    }

    /** The worker of the screens comes as one of another build, and one of its files does not come at all; null for none. */
    void carry(String otherBuild, String missingFile) {
        build = otherBuild;
        missing = missingFile;
    }

    /** The answers to so many further sendings of records are swallowed after the service has given them. */
    void swallow(int answers) {
        swallow.set(answers);
    }

    /** How many bytes the service has sent so far, heads and all. */
    public long carried() {
        return carried.get();
    }

    int leftToSwallow() {
        return swallow.get();
    }

    private void listen() {
        while (!door.isClosed()) {
            try {
                Socket tablet = door.accept();
                if (cut) {
                    close(tablet);
                    continue;
                }
                Socket far;
                try {
                    far = new Socket(InetAddress.getByName("localhost"), service);
                } catch (IOException nobodyThere) {
                    close(tablet);
                    continue;
                }
                open.add(tablet);
                open.add(far);
                State state = new State();
                double luck;
                synchronized (random) {
                    luck = random.nextDouble();
                }
                if (luck < loss / 2) {
                    close(tablet);
                    close(far);
                    continue;
                }
                state.losesAnswer = luck < loss;
                pump(tablet, far, state, true);
                pump(far, tablet, state, false);
            } catch (IOException closed) {
                // The next one may come through.
            }
        }
    }

    private static final class State {
        private volatile boolean sendsRecords;
        private volatile boolean asksWorker;
        private volatile boolean losesAnswer;
    }

    private void pump(Socket from, Socket to, State state, boolean asking) {
        Thread thread = new Thread(() -> {
            byte[] buffer = new byte[65536];
            try (InputStream in = from.getInputStream(); OutputStream out = to.getOutputStream()) {
                for (int count = in.read(buffer); count >= 0 && !cut; count = in.read(buffer)) {
                    if (delayMs > 0) {
                        Thread.sleep(delayMs / 2);
                    }
                    if (!asking && state.losesAnswer) {
                        break;
                    }
                    if (!asking && state.asksWorker && build != null) {
                        rebuild(buffer, count);
                    }
                    if (asking) {
                        String head = new String(buffer, 0, Math.min(count, 200), StandardCharsets.ISO_8859_1);
                        state.asksWorker = head.startsWith("GET /sw.js ");
                        if (missing != null && head.startsWith("GET " + missing + " ")) {
                            break;
                        }
                        state.sendsRecords = head.startsWith("POST /api/records") || state.sendsRecords && !head.matches("(?s)(GET|POST|PUT) .*");
                    } else if (state.sendsRecords && swallow.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
                        break;
                    }
                    if (asking && build != null) {
                        asPlain(buffer, count);
                    }
                    carried.addAndGet(asking ? 0 : count);
                    out.write(buffer, 0, count);
                    out.flush();
                }
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
            } catch (IOException broken) {
                // A broken wire is what this is for.
            } finally {
                close(from);
                close(to);
            }
        }, "wire pump");
        thread.setDaemon(true);
        thread.start();
    }

    /** Asks for the file as it is, so that another build can be put in. */
    private static void asPlain(byte[] buffer, int count) {
        int at = new String(buffer, 0, count, StandardCharsets.ISO_8859_1).indexOf("Accept-Encoding: ");
        if (at >= 0) {
            buffer[at] = 'X';
        }
    }

    /** Puts another build in the place of the worker's, of the same length. */
    private void rebuild(byte[] buffer, int count) {
        String before = "const BUILD = \"";
        int at = new String(buffer, 0, count, StandardCharsets.ISO_8859_1).indexOf(before);
        if (at >= 0 && at + before.length() + build.length() < count) {
            System.arraycopy(build.getBytes(StandardCharsets.ISO_8859_1), 0, buffer, at + before.length(), build.length());
        }
    }

    private static void close(Socket socket) {
        try {
            socket.close();
        } catch (IOException already) {
            // It is closed either way.
        }
    }

    @Override
    public void close() throws IOException {
        door.close();
        open.forEach(Wire::close);
    }
}
