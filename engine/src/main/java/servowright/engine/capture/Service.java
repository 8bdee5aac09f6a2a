package servowright.engine.capture;

/**
 * What an 11-bit identifier is for when a bus keeps to the predefined connection set of CiA 301 (function code times 128 plus node;
 * table seen in public manuals, the text of the standard not opened). A bus need not keep to it.
 */
public enum Service {
    NETWORK_MANAGEMENT("network management", 0x000, false),
    SYNC("SYNC", 0x080, false),
    EMERGENCY("emergency", 0x080, true),
    TIME("time stamp", 0x100, false),
    TRANSMIT_1("1st process data sent", 0x180, true),
    RECEIVE_1("1st process data received", 0x200, true),
    TRANSMIT_2("2nd process data sent", 0x280, true),
    RECEIVE_2("2nd process data received", 0x300, true),
    TRANSMIT_3("3rd process data sent", 0x380, true),
    RECEIVE_3("3rd process data received", 0x400, true),
    TRANSMIT_4("4th process data sent", 0x480, true),
    RECEIVE_4("4th process data received", 0x500, true),
    SERVICE_REPLY("service data, reply", 0x580, true),
    SERVICE_REQUEST("service data, request", 0x600, true),
    HEARTBEAT("heartbeat", 0x700, true),
    OTHER("other", -1, false);

    private static final Service[] ALL = values();

    private final String words;
    private final int base;
    private final boolean ofNode;

    Service(String words, int base, boolean ofNode) {
        this.words = words;
        this.base = base;
        this.ofNode = ofNode;
    }

    public String words() {
        return words;
    }

    /** Service of an 11-bit identifier. */
    public static Service of(int identifier) {
        int node = node(identifier);
        for (Service service : ALL) {
            if (service.base == identifier - node && service.ofNode == (node > 0)) {
                return service;
            }
        }
        return OTHER;
    }

    /** Node that an identifier names, 0 for none. */
    public static int node(int identifier) {
        return identifier & 0x7f;
    }
}
