/**
 * Reads captures of CAN traffic: text logs and console output of Linux tools, pcap and pcapng, and two table forms of bus
 * analysers, packed by gzip or not. A capture of any size passes through one buffer.
 */
@NullMarked
package servowright.app.input.capture;

import org.jspecify.annotations.NullMarked;
