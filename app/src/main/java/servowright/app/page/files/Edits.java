package servowright.app.page.files;

import servowright.app.input.MachineText;
import servowright.app.page.Asked;
import servowright.app.view.PartView;
import servowright.engine.known.Place;

/** Addresses at which values and texts are shown and changed. */
public final class Edits {
    private Edits() {}

    /** Whether a row can be changed by itself. */
    public static boolean can(PartView.Row row) {
        return !row.path().isEmpty() && MachineText.FILES.contains(file(row.place()));
    }

    /** Whether the value at a place can be written anew. */
    public static boolean open(Place place) {
        return !place.path().isEmpty() && place.line() > 0 && MachineText.FILES.contains(place.file());
    }

    /** Where the value of a row is changed. */
    public static String address(PartView.Row row) {
        return address(file(row.place()), row.path());
    }

    public static String address(Place place) {
        return address(place.file(), place.path());
    }

    private static String address(String file, String path) {
        return "/files/change?file=" + Asked.encoded(file) + "&path=" + Asked.encoded(path);
    }

    /** The line of a row in its file. */
    public static String line(PartView.Row row) {
        int colon = row.place().indexOf(':');
        return colon < 0
                ? "/files/" + row.place()
                : "/files/" + file(row.place()) + "#line-" + row.place().substring(colon + 1);
    }

    public static String line(Place place) {
        return "/files/" + place.file() + "#line-" + place.line();
    }

    private static String file(String place) {
        int colon = place.indexOf(':');
        return colon < 0 ? place : place.substring(0, colon);
    }
}
