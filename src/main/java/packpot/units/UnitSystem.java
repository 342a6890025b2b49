package packpot.units;

/** The measures a household owns: sheets print grams always, and these beside them. */
public enum UnitSystem {
    US,
    METRIC
}
