package packpot.audit;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Bags in fridge and freezer, as they are moved by hand; what cannot be done is a finding. */
final class BagStore {
    private static final double CLOSE_GRAMS = 1e-6;

    private enum Place {
        MISSING,
        FRIDGE,
        FREEZER
    }

    private static final class Bag {
        private Place place = Place.MISSING;
        private double grams;
        /** Days in the fridge before it was frozen. */
        private int daysBefore;
        /** The day from which it can be fed, or on which it was frozen. */
        private int since;
    }

    private final Bag[] bags;
    private final double gramsPerBag;
    private final List<Finding> findings;
    private int oldestFed;

    BagStore(int bags, double gramsPerBag, List<Finding> findings) {
        this.bags = new Bag[bags];
        for (int i = 0; i < bags; i++) {
            this.bags[i] = new Bag();
        }
        this.gramsPerBag = gramsPerBag;
        this.findings = findings;
    }

    /** Fills bags on the cook day; each must be filled once. */
    void fill(List<Integer> numbers) {
        for (int number : numbers) {
            Bag bag = bag(number, Place.MISSING, "filled");
            if (bag != null) {
                bag.place = Place.FRIDGE;
                bag.grams = gramsPerBag;
            }
        }
        for (int i = 0; i < bags.length; i++) {
            if (bags[i].place == Place.MISSING) {
                findings.add(new Finding("bag " + (i + 1), "is never filled"));
            }
        }
    }

    void toFreezer(int number, int day) {
        Bag bag = bag(number, Place.FRIDGE, "frozen");
        if (bag != null) {
            if (bag.grams < gramsPerBag - CLOSE_GRAMS) {
                findings.add(new Finding("bag " + number, "is frozen though it was opened"));
            }
            bag.place = Place.FREEZER;
            bag.daysBefore += day - bag.since;
            bag.since = day;
        }
    }

    /**
     * Moves a bag to the fridge.
     *
     * @return days that it was in the freezer
     */
    double toFridge(int number, int day, double thawDays) {
        Bag bag = bag(number, Place.FREEZER, "moved to thaw");
        if (bag == null) {
            return 0;
        }
        int frozen = day - bag.since;
        bag.place = Place.FRIDGE;
        bag.since = (int) Math.ceil(day + thawDays - 1e-9);
        return frozen;
    }

    private @Nullable Bag bag(int number, Place from, String done) {
        if (number < 1 || number > bags.length) {
            findings.add(new Finding("bag " + number, "is " + done + ", but there are " + bags.length + " bags"));
            return null;
        }
        Bag bag = bags[number - 1];
        if (bag.place != from) {
            findings.add(new Finding("bag " + number, "is to be " + done + ", but it is not where that can be done"));
            return null;
        }
        return bag;
    }

    /** Feeds so much from the bags that are ready, those with the lowest numbers first; gives what there was. */
    double feed(double grams, int day, int mostDays, LocalDate date) {
        double fed = 0;
        oldestFed = 0;
        for (int i = 0; i < bags.length && fed < grams - CLOSE_GRAMS; i++) {
            Bag bag = bags[i];
            if (bag.place == Place.FRIDGE && bag.since <= day && bag.grams > CLOSE_GRAMS) {
                double part = Math.min(bag.grams, grams - fed);
                int days = bag.daysBefore + day - bag.since;
                if (days > mostDays) {
                    findings.add(new Finding(
                            date.toString(),
                            "bag " + (i + 1) + " has been in the fridge for " + days + " days, at most " + mostDays
                                    + " are safe; use smaller bags"));
                }
                bag.grams -= part;
                fed += part;
                oldestFed = Math.max(oldestFed, days);
            }
        }
        return fed;
    }

    int oldestFed() {
        return oldestFed;
    }

    /** Food in all bags. */
    double grams() {
        double grams = 0;
        for (Bag bag : bags) {
            grams += bag.grams;
        }
        return grams;
    }

    double fridgeGrams(int day) {
        double grams = 0;
        for (Bag bag : bags) {
            grams += bag.place == Place.FRIDGE && bag.since <= day ? bag.grams : 0;
        }
        return grams;
    }

    int frozen() {
        return count(Place.FREEZER, -1);
    }

    /** Bags that are in the fridge and not ready yet. */
    int thawing(int day) {
        return count(Place.FRIDGE, day);
    }

    private int count(Place place, int after) {
        int count = 0;
        for (Bag bag : bags) {
            count += bag.place == place && bag.since > after ? 1 : 0;
        }
        return count;
    }
}
