package packpot.report;

/** What every sheet says of itself. */
public final class Disclaimer {
    /** In plain words, what the program is not. */
    public static final String TEXT =
            "Packpot reckons; it is not a veterinarian. Show this sheet to yours before you feed it, above all for a dog"
                    + " that is growing, in whelp, nursing, losing weight, on medicine, or ill with kidney, liver, pancreas"
                    + " or stones. Foods vary: the figures are table values. Cooking, cooling and storing follow the"
                    + " food-safety rules of where you live.";

    private Disclaimer() {}
}
