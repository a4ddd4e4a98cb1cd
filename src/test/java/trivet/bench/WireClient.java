package trivet.bench;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** One kept-open HTTP/1.1 connection, as lean as can be, so that the client takes little of the processors it shares. */
final class WireClient implements AutoCloseable {

    private final Socket socket;
    private final OutputStream out;
    private final InputStream in;

    WireClient(int port) throws IOException {
        socket = new Socket("127.0.0.1", port);
        socket.setTcpNoDelay(true);
        out = socket.getOutputStream();
        in = new BufferedInputStream(socket.getInputStream());
    }

    /** Sends a body by PUT or POST and returns the status; the answer's body is read and dropped. */
    int send(String method, String path, String token, byte[] body) throws IOException {
        byte[] head = (method + " " + path + " HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer " + token + "\r\nContent-Type: application/json\r\nContent-Length: "
                + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
        byte[] all = new byte[head.length + body.length];
        System.arraycopy(head, 0, all, 0, head.length);
        System.arraycopy(body, 0, all, head.length, body.length);
        out.write(all);
        out.flush();
        int status = Integer.parseInt(line().split(" ")[1]);
        int length = -1;
        boolean chunked = false;
        for (String header = line(); !header.isEmpty(); header = line()) {
            String lower = header.toLowerCase(java.util.Locale.ROOT);
            if (lower.startsWith("content-length:")) {
                length = Integer.parseInt(lower.substring(15).strip());
            }
            chunked |= lower.startsWith("transfer-encoding:") && lower.contains("chunked");
        }
        if (chunked) {
            for (int size = Integer.parseInt(line(), 16); size > 0; size = Integer.parseInt(line(), 16)) {
                in.readNBytes(size + 2);
            }
            line();
        } else if (length > 0) {
            in.readNBytes(length);
        }
        return status;
    }

    private String line() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("The service closed the connection.");
            }
            if (c != '\r') {
                text.append((char) c);
            }
        }
        return text.toString();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
