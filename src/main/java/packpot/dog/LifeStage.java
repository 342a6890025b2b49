package packpot.dog;

import packpot.words.Term;

/** What a dog's body is at; decides its energy equation and its column of a profile. */
public enum LifeStage {
    GROWTH("growing"),
    ADULT("adult"),
    WEIGHT_LOSS("losing weight"),
    WEIGHT_GAIN("gaining weight"),
    GESTATION("in whelp"),
    LACTATION("nursing");

    private final String words;

    LifeStage(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public Term term() {
        return Term.ofWords("stage", words);
    }

    /** Whether the body builds another: growth, gestation and lactation. */
    public boolean builds() {
        return this == GROWTH || this == GESTATION || this == LACTATION;
    }

    /** Stages for which a veterinarian should be asked before anything is fed. */
    public boolean asksForVeterinarian() {
        return this != ADULT;
    }
}
