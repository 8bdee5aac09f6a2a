/**
 * The assessment as rows, sentences, figures in digits and plot series: what command line, JSON and dossier show alike.
 * This is the only place that rounds.
 */
@NullMarked
package servowright.app.view;

import org.jspecify.annotations.NullMarked;
