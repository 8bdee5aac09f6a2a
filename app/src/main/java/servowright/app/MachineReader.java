package servowright.app;

import java.nio.file.Path;
import servowright.app.cli.MachineSource;
import servowright.app.input.MachineFolder;
import servowright.engine.assessment.Assess;
import servowright.engine.assessment.AssessSettings;

/** From a folder to its assessment: reads the files, then asks the engine. */
record MachineReader(String version) implements MachineSource {
    @Override
    public Read read(Path folder) {
        MachineFolder read = MachineFolder.read(folder);
        if (read instanceof MachineFolder.Loaded loaded) {
            AssessSettings settings = AssessSettings.whole(version, loaded.sha256());
            return new Read.Assessed(
                    Assess.assess(loaded.machine(), loaded.tests(), loaded.recordings(), loaded.captures(), settings),
                    loaded.notes());
        }
        return new Read.Refused(((MachineFolder.Refused) read).problems());
    }
}
