package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Identifiers of the predefined connection set: function code in the upper four bits, number of the node in the lower seven.
 * <b>Source.</b> CiA 301 (text not opened); table in a public fieldbus manual (seen).
 */
public enum PredefinedConnections {
    NETWORK_MANAGEMENT(0x000, false),
    SYNC(0x080, false),
    EMERGENCY(0x080, true),
    TIME(0x100, false),
    /** From the node, first process data object. */
    FEEDBACK(0x180, true),
    /** To the node, first process data object. */
    COMMAND(0x200, true),
    SERVICE_ANSWER(0x580, true),
    SERVICE_REQUEST(0x600, true),
    HEARTBEAT(0x700, true);

    private final int function;
    private final boolean perNode;

    PredefinedConnections(int function, boolean perNode) {
        this.function = function;
        this.perNode = perNode;
    }

    /**
     * Identifier for a node.
     *
     * @param node 1 to 127; ignored where one identifier serves all
     */
    public int identifier(int node) {
        Require.within("node", 1, 127, node, "");
        return perNode ? function + node : function;
    }
}
