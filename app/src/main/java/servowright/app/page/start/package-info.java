/** The first visit: the demo with a tour, or a machine from a few questions, on the page. */
@NullMarked
package servowright.app.page.start;

import org.jspecify.annotations.NullMarked;
