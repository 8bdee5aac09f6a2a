package servowright.engine.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Listens to the nodes of one bus as CiA 301 lets them speak. */
final class NodeWatch {
    private static final int NODES = 128;
    private static final int MOST_CODES = 64;
    private static final int MOST_BOOT_UPS = 100;
    private static final int TOGGLE = 0x80;
    private static final int ABORT = 0x80;
    private static final int RESET_NODE = 0x81;
    private static final int RESET_COMMUNICATION = 0x82;

    private final int bus;
    private final @Nullable One[] nodes = new One[NODES];

    NodeWatch(int bus) {
        this.bus = bus;
    }

    private static final class One {
        private long heartbeats;
        private int state = -1;
        private int before = -1;
        private boolean heard;
        private boolean reset;
        private int restarts;
        private int alternations;
        private final List<Long> bootUpsNs = new ArrayList<>();
        private final Map<Integer, Long> emergencies = new TreeMap<>();
        private final Map<Long, Long> aborts = new TreeMap<>();
        private final AxisWatch axis = new AxisWatch();
    }

    private One node(int number) {
        One one = nodes[number];
        if (one == null) {
            one = new One();
            nodes[number] = one;
        }
        return one;
    }

    /** Takes a data frame with an 11-bit identifier. */
    void frame(Frame frame) {
        int id = frame.identifier();
        int node = id & 0x7f;
        switch (id >>> 7) {
            case 0 -> command(frame, id);
            case 1 -> emergency(frame, node);
            case 3 -> {
                if (node > 0) {
                    node(node).axis.status(frame);
                    heard(node);
                }
            }
            case 4 -> {
                One one = nodes[node];
                if (one != null) {
                    one.axis.command(frame);
                }
            }
            case 5, 7, 9 -> heard(node);
            case 11, 12 -> service(frame, node);
            case 14 -> errorControl(frame, node);
            default -> {}
        }
    }

    private void heard(int node) {
        if (node > 0) {
            node(node).heard = true;
        }
    }

    private void command(Frame frame, int id) {
        boolean reset = frame.at(0) == RESET_NODE || frame.at(0) == RESET_COMMUNICATION;
        if (id != 0 || frame.length() < 2 || !reset) {
            return;
        }
        for (int k = 1; k < NODES; k++) {
            One one = nodes[k];
            if (one != null && (frame.at(1) == 0 || frame.at(1) == k)) {
                one.reset = true;
            }
        }
    }

    private void emergency(Frame frame, int node) {
        if (node > 0 && frame.length() == 8) {
            Map<Integer, Long> codes = node(node).emergencies;
            int code = (int) frame.little(0, 2);
            if (codes.size() < MOST_CODES || codes.containsKey(code)) {
                codes.merge(code, 1L, Long::sum);
            }
        }
    }

    private void service(Frame frame, int node) {
        if (node > 0 && frame.length() == 8 && frame.at(0) == ABORT) {
            Map<Long, Long> codes = node(node).aborts;
            long code = frame.little(4, 4);
            if (codes.size() < MOST_CODES || codes.containsKey(code)) {
                codes.merge(code, 1L, Long::sum);
            }
        }
    }

    private void errorControl(Frame frame, int number) {
        if (number == 0 || frame.length() != 1) {
            return;
        }
        One one = node(number);
        int state = frame.at(0) & ~TOGGLE;
        if (state == 0) {
            one.restarts += one.heard && !one.reset ? 1 : 0;
            if (one.bootUpsNs.size() < MOST_BOOT_UPS) {
                one.bootUpsNs.add(frame.timeNs());
            }
            one.reset = false;
        } else {
            one.heartbeats++;
            one.alternations += one.state >= 0 && state != one.state && state == one.before ? 1 : 0;
        }
        one.heard = true;
        one.before = one.state;
        one.state = state;
    }

    List<Node> nodes() {
        List<Node> all = new ArrayList<>();
        for (int k = 1; k < NODES; k++) {
            One one = nodes[k];
            if (one != null && (one.state >= 0 || !one.emergencies.isEmpty() || !one.aborts.isEmpty())) {
                all.add(new Node(
                        bus,
                        k,
                        one.heartbeats,
                        one.state,
                        one.bootUpsNs,
                        one.restarts,
                        one.alternations,
                        one.emergencies,
                        one.aborts,
                        one.axis.turns()));
            }
        }
        return all;
    }
}
