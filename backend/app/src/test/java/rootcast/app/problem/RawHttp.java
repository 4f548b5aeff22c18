package rootcast.app.problem;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import rootcast.app.WithToken;

/** Requests written byte by byte. */
final class RawHttp {

    static final int TEN_MEGABYTES = 10_000_000;

    private final URI base;

    RawHttp(URI base) {
        this.base = base;
    }

    /** Head of the answer to a body of ten megabytes of blanks that does not say how long it is. */
    String sentInPieces(String path) throws IOException {
        byte[] piece = (Integer.toHexString(100_000) + "\r\n" + " ".repeat(100_000) + "\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        try (Socket socket = new Socket(base.getHost(), base.getPort())) {
            socket.setSoTimeout(60_000);
            OutputStream out = socket.getOutputStream();
            out.write(("POST " + path + " HTTP/1.1\r\nHost: x\r\nAuthorization: " + WithToken.BEARER
                            + "\r\nContent-Type: application/json\r\n" + "Idempotency-Key: " + UUID.randomUUID()
                            + "\r\nTransfer-Encoding: chunked\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            try {
                for (int sent = 0; sent < TEN_MEGABYTES; sent += 100_000) {
                    out.write(piece);
                }
                out.write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            } catch (IOException hungUpOn) {
                // the answer came before the end of the body
            }
            return head(socket.getInputStream());
        }
    }

    /** Head of the answer to an address that a client of HTTP might not send. */
    String get(String address) throws IOException {
        try (Socket socket = new Socket(base.getHost(), base.getPort())) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream()
                    .write(("GET " + address + " HTTP/1.1\r\nHost: x\r\nAuthorization: " + WithToken.BEARER
                                    + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            return head(socket.getInputStream());
        }
    }

    /** Status line and headers. */
    private static String head(InputStream in) throws IOException {
        StringBuilder head = new StringBuilder();
        while (head.indexOf("\r\n\r\n") < 0) {
            int next = in.read();
            if (next < 0) {
                break;
            }
            head.append((char) next);
        }
        return head.toString();
    }
}
