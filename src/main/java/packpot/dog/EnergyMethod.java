package packpot.dog;

import java.util.Locale;

/** Which published equations the household goes by. */
public final class EnergyMethod {

    /** For adults at their maintenance. */
    public enum Maintenance {
        BY_ACTIVITY,
        BY_AGE,
        BY_RESTING,
        NRC_PET;

        public String key() {
            return EnergyMethod.key(this);
        }
    }

    /** For puppies with an expected adult weight. */
    public enum Growth {
        KLEIN,
        NRC,
        BANDS;

        public String key() {
            return EnergyMethod.key(this);
        }
    }

    private EnergyMethod() {}

    private static String key(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
