package servowright.app.page;

import io.javalin.config.RoutesConfig;

/** One subject across the top of the page. A new one is a package of its own and one line in {@link Subjects}. */
public interface Subject {
    /** First part of its addresses: {@code /bench}. */
    String path();

    /** As the strip shows it. */
    String title();

    /** Answers its addresses. */
    void routes(RoutesConfig routes, Desk desk);
}
