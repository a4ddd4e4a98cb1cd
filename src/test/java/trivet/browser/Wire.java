package trivet.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/** The wire between a tablet and the service: it can be cut, and it can swallow the service's answer to records that were already taken in. */
final class Wire implements AutoCloseable {

    private final ServerSocket door;
    private final int service;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private volatile boolean cut;
    private final AtomicInteger swallow = new AtomicInteger();

    Wire(int service) throws IOException {
        this.service = service;
        this.door = new ServerSocket();
        door.bind(new InetSocketAddress(InetAddress.getByName("localhost"), 0));
        Thread listener = new Thread(this::listen, "wire");
        listener.setDaemon(true);
        listener.start();
    }

    String address() {
        return "http://localhost:" + door.getLocalPort();
    }

    /** Cuts the wire, or joins it again. */
    void cut(boolean now) {
        cut = now;
        if (now) {
            open.forEach(Wire::close);
        }
    }

    /** The answers to so many further sendings of records are swallowed after the service has given them. */
    void swallow(int answers) {
        swallow.set(answers);
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
                Socket far = new Socket(InetAddress.getByName("localhost"), service);
                open.add(tablet);
                open.add(far);
                State state = new State();
                pump(tablet, far, state, true);
                pump(far, tablet, state, false);
            } catch (IOException closed) {
                // The next one may come through.
            }
        }
    }

    private static final class State {
        private volatile boolean sendsRecords;
    }

    private void pump(Socket from, Socket to, State state, boolean asking) {
        Thread thread = new Thread(() -> {
            byte[] buffer = new byte[65536];
            try (InputStream in = from.getInputStream(); OutputStream out = to.getOutputStream()) {
                for (int count = in.read(buffer); count >= 0 && !cut; count = in.read(buffer)) {
                    if (asking) {
                        String head = new String(buffer, 0, Math.min(count, 200), StandardCharsets.ISO_8859_1);
                        state.sendsRecords = head.startsWith("POST /api/records") || state.sendsRecords && !head.matches("(?s)(GET|POST|PUT) .*");
                    } else if (state.sendsRecords && swallow.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
                        break;
                    }
                    out.write(buffer, 0, count);
                    out.flush();
                }
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
