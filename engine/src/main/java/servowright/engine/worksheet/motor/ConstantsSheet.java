package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Problem;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Worksheet;

/** A worksheet that learns the constants of a motor by {@link ConstantInputs}. */
interface ConstantsSheet extends Worksheet {
    @Override
    default List<Problem> contradictions(Inputs inputs) {
        return ConstantInputs.check(new Contradictions(declaration()), inputs).problems();
    }
}
