package servowright.app.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;

/** Style sheet and scripts: ours, and the plotting library from its jar. */
final class Resources {
    private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/dist/";
    private static final String CSS = "text/css; charset=utf-8";
    private static final String SCRIPT = "text/javascript; charset=utf-8";

    private record File(String resource, String type) {}

    private static final Map<String, File> FILES = Map.of(
            "verdicts.css", new File("/servowright/app/view/verdicts.css", CSS),
            "page.css", new File("page.css", CSS),
            "page.js", new File("page.js", SCRIPT),
            "plots.js", new File("plots.js", SCRIPT),
            "uplot.css", new File(UPLOT + "uPlot.min.css", CSS),
            "uplot.js", new File(UPLOT + "uPlot.esm.js", SCRIPT));

    private Resources() {}

    static void routes(RoutesConfig routes) {
        FILES.forEach((name, file) -> routes.get("/own/" + name, ctx -> send(ctx, file)));
    }

    private static void send(Context ctx, File file) throws IOException {
        try (InputStream in = Resources.class.getResourceAsStream(file.resource())) {
            if (in == null) {
                ctx.status(404);
                return;
            }
            ctx.header("Cache-Control", "private, max-age=600");
            ctx.contentType(file.type()).result(in.readAllBytes());
        }
    }
}
