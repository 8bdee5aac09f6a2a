package servowright.app.page;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Lets in only who was given this run's address. Any page on the net can make a browser send requests to this computer;
 * so the name asked for must be ours (else a foreign name could be pointed here), what comes from another page is refused,
 * and every request must carry the key of this run. The key comes once in the address and stays in a cookie after that.
 */
final class Gate {
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private final String key = freshKey();
    private final IntSupplier port;

    Gate(IntSupplier port) {
        this.port = port;
    }

    private static String freshKey() {
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    }

    /** The address to open: whoever has it may come in. */
    String address() {
        return "http://127.0.0.1:" + port.getAsInt() + "/?key=" + key;
    }

    /** Refuses, or goes on. */
    void check(Context ctx) {
        headers(ctx);
        String host = Optional.ofNullable(ctx.header("Host")).orElse("");
        if (!ours().contains(host)) {
            refuse(ctx, 421, "This page answers to 127.0.0.1 alone.");
            return;
        }
        String origin = ctx.header("Origin");
        boolean reads = Set.of("GET", "HEAD").contains(ctx.method().name());
        if (origin == null ? !reads : !origin.equals("http://" + host)) {
            refuse(ctx, 403, "This came from another page.");
            return;
        }
        String fresh = reads ? ctx.queryParam("key") : null;
        if (fresh != null && same(fresh)) {
            Cookie cookie = new Cookie(cookie(), key);
            cookie.setPath("/");
            cookie.setHttpOnly(true);
            cookie.setSameSite(SameSite.STRICT);
            ctx.cookie(cookie);
            ctx.redirect(withoutKey(ctx));
            ctx.skipRemainingHandlers();
        } else if (!same(Optional.ofNullable(ctx.cookie(cookie())).orElse(""))) {
            refuse(ctx, 403, "Open the address that servowright printed: it holds the key of this run.");
        }
    }

    private static String withoutKey(Context ctx) {
        String rest = Stream.of(
                        Optional.ofNullable(ctx.queryString()).orElse("").split("&"))
                .filter(part -> !part.isEmpty() && !part.startsWith("key="))
                .collect(Collectors.joining("&"));
        return ctx.path() + (rest.isEmpty() ? "" : "?" + rest);
    }

    private static void headers(Context ctx) {
        ctx.header("Content-Security-Policy", POLICY);
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("X-Frame-Options", "DENY");
        ctx.header(
                "Referrer-Policy", "same-origin"); // with none at all, browsers would not say where a form comes from
        ctx.header("Cross-Origin-Opener-Policy", "same-origin");
        ctx.header("Cross-Origin-Resource-Policy", "same-origin");
        ctx.header("Cache-Control", "no-store");
    }

    private static void refuse(Context ctx, int status, String why) {
        ctx.status(status).contentType("text/plain; charset=utf-8").result(why + "\n");
        ctx.skipRemainingHandlers();
    }

    private Set<String> ours() {
        return Set.of("127.0.0.1:" + port.getAsInt(), "localhost:" + port.getAsInt());
    }

    /** Cookies of one computer are shared by all its ports. */
    private String cookie() {
        return "servowright-" + port.getAsInt();
    }

    private boolean same(String given) {
        return MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), key.getBytes(StandardCharsets.UTF_8));
    }
}
