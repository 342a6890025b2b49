package packpot.household;

import org.jspecify.annotations.Nullable;
import packpot.dog.Dog;
import packpot.dog.Reproduction;

/** Reads "gestation" and "lactation" of a dog. */
final class ReproductionReader {

    private ReproductionReader() {}

    static @Nullable Reproduction read(Fields fields, Dog.@Nullable Sex sex) {
        Fields gestation = fields.object("gestation");
        Fields lactation = fields.object("lactation");
        if ((gestation != null || lactation != null) && sex == Dog.Sex.MALE) {
            fields.fault(gestation != null ? "gestation" : "lactation", "is given for a male dog");
        }
        if (gestation != null && lactation != null) {
            fields.fault("lactation", "is given beside \"gestation\"; give one of the two");
        }
        if (gestation != null) {
            Integer week = required(gestation, "week", 1, 9);
            Integer puppies = gestation.whole("expectedPuppies", 1, 16);
            gestation.end();
            return week == null ? null : new Reproduction.Gestation(week, puppies);
        }
        if (lactation != null) {
            Integer week = required(lactation, "week", 1, 4);
            Integer puppies = required(lactation, "puppies", 1, 16);
            lactation.end();
            return week == null || puppies == null ? null : new Reproduction.Lactation(week, puppies);
        }
        return null;
    }

    private static @Nullable Integer required(Fields fields, String name, int least, int most) {
        if (!fields.has(name)) {
            fields.fault(name, "is missing; expected a whole number from " + least + " to " + most);
        }
        return fields.whole(name, least, most);
    }
}
