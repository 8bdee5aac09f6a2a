package servowright.engine.capture;

import java.util.Map;

/**
 * What codes of emergencies and of refused service requests mean.
 *
 * <p><b>Source.</b> CiA 301, classes of emergency codes and abort codes (from memory; those of emergencies seen in public device
 * manuals, the text of the standard not opened). The low byte of an emergency belongs to the device: what is not here is named by its
 * class.
 */
final class CodeWords {
    private static final int EMERGENCY_DIGITS = 4;

    private static final Map<Integer, String> EMERGENCIES = Map.ofEntries(
            Map.entry(0x0000, "errors are gone"),
            Map.entry(0x2310, "too much output current"),
            Map.entry(0x3210, "supply voltage too high"),
            Map.entry(0x3220, "supply voltage too low"),
            Map.entry(0x4210, "device too hot"),
            Map.entry(0x4310, "drive too hot"),
            Map.entry(0x7300, "sensor"),
            Map.entry(0x8110, "messages lost, receiver overrun"),
            Map.entry(0x8120, "controller error passive"),
            Map.entry(0x8130, "heartbeat missing"),
            Map.entry(0x8140, "back from off the bus"),
            Map.entry(0x8150, "identifier collides"),
            Map.entry(0x8210, "process data too short"),
            Map.entry(0x8220, "process data too long"),
            Map.entry(0x8250, "process data late"),
            Map.entry(0x8611, "following error"));

    private static final Map<Integer, String> CLASSES = Map.ofEntries(
            Map.entry(0x1, "generic"),
            Map.entry(0x2, "current"),
            Map.entry(0x3, "voltage"),
            Map.entry(0x4, "temperature"),
            Map.entry(0x5, "hardware"),
            Map.entry(0x6, "software"),
            Map.entry(0x7, "additional module"),
            Map.entry(0x8, "monitoring"),
            Map.entry(0x9, "external"),
            Map.entry(0xf, "of the device"));

    private static final Map<Long, String> ABORTS = Map.ofEntries(
            Map.entry(0x0503_0000L, "toggle bit did not alternate"),
            Map.entry(0x0504_0000L, "timed out"),
            Map.entry(0x0504_0001L, "command not known"),
            Map.entry(0x0601_0000L, "access not supported"),
            Map.entry(0x0601_0001L, "object can only be written"),
            Map.entry(0x0601_0002L, "object can only be read"),
            Map.entry(0x0602_0000L, "no such object"),
            Map.entry(0x0604_0041L, "object cannot be mapped"),
            Map.entry(0x0604_0042L, "process data would become too long"),
            Map.entry(0x0606_0000L, "hardware error"),
            Map.entry(0x0607_0010L, "length does not fit"),
            Map.entry(0x0609_0011L, "no such sub-index"),
            Map.entry(0x0609_0030L, "value out of range"),
            Map.entry(0x0800_0000L, "general error"),
            Map.entry(0x0800_0020L, "cannot be stored"),
            Map.entry(0x0800_0022L, "not in this state"));

    private CodeWords() {}

    /** Words in brackets with a blank before them; empty for a code that is not known. */
    static String of(long code, int digits) {
        String words = digits == EMERGENCY_DIGITS ? emergency((int) code) : ABORTS.getOrDefault(code, "");
        return words.isEmpty() ? "" : " (" + words + ")";
    }

    private static String emergency(int code) {
        return EMERGENCIES.getOrDefault(code, CLASSES.getOrDefault(code >>> 12, ""));
    }
}
