package servowright.app.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A capture as JSON. */
final class CaptureJson {
    private CaptureJson() {}

    static Object of(CaptureView capture) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("file", capture.file());
        json.put("form", capture.summary().form());
        json.put("frames", capture.summary().frames());
        json.put("lost", capture.summary().lost());
        json.put("xl", capture.summary().xl());
        json.put("others", capture.summary().others());
        json.put("malformed", capture.summary().malformed());
        json.put("notes", capture.summary().notes());
        json.put("buses", capture.buses().stream().map(CaptureJson::bus).toList());
        json.put("messages", capture.plan().stream().map(CaptureJson::message).toList());
        return json;
    }

    private static Object bus(BusView bus) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", bus.name());
        json.put("frames", bus.frames());
        json.put("fd_frames", bus.fdFrames());
        bus.span().ifPresent(f -> json.put("span", FigureJson.figure(f)));
        bus.load().ifPresent(f -> json.put("load", FigureJson.figure(f)));
        bus.carried().ifPresent(f -> json.put("carried", FigureJson.figure(f)));
        json.put(
                "worst_windows",
                bus.worst().entrySet().stream()
                        .map(e -> window(e.getKey(), e.getValue()))
                        .toList());
        json.put(
                "identifiers",
                bus.identifiers().stream().map(CaptureJson::identifier).toList());
        json.put("nodes", bus.nodes());
        json.put("remarks", FigureJson.sentences(bus.remarks()));
        return json;
    }

    private static Object message(CaptureView.MessageView message) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", message.name());
        json.put("from", message.from());
        json.put("identifier", message.id());
        json.put("state", message.state());
        json.put("planned_period", FigureJson.figure(message.period()));
        message.seen().ifPresent(f -> json.put("period", FigureJson.figure(f)));
        json.put("missing", message.missing());
        json.put("varied", FigureJson.figure(message.varied()));
        message.allowed().ifPresent(f -> json.put("allowed", FigureJson.figure(f)));
        return json;
    }

    private static Object window(FigureText window, FigureText load) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("window", FigureJson.figure(window));
        json.put("load", FigureJson.figure(load));
        return json;
    }

    private static Object identifier(BusView.IdView id) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("identifier", id.id());
        json.put("service", id.what());
        json.put("frames", id.frames());
        json.put("remotes", id.remotes());
        json.put("bytes", id.bytes());
        List<FigureText> period = id.period();
        if (!period.isEmpty()) {
            json.put("period", FigureJson.figure(period.get(0)));
            json.put("shortest", FigureJson.figure(period.get(1)));
            json.put("longest", FigureJson.figure(period.get(2)));
        }
        json.put("gaps", id.gaps());
        json.put("missing", id.missing());
        json.put("bursts", id.bursts());
        json.put("share", FigureJson.figure(id.share()));
        return json;
    }
}
