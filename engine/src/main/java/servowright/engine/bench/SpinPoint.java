package servowright.engine.bench;

import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;

/**
 * One voltage at one frequency: a point on the line of back-EMF against speed.
 *
 * @param contacts where it was read
 * @param volt     peak of the fundamental between these contacts
 * @param hertz    electrical frequency
 */
record SpinPoint(BenchTest test, Contacts contacts, Known volt, Known hertz) {}
