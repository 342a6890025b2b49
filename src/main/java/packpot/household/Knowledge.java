package packpot.household;

import org.jspecify.annotations.Nullable;
import packpot.dog.DogOverTime;
import packpot.dog.EnergyEquations;
import packpot.food.FoodCatalogue;
import packpot.food.FoodEnergy;
import packpot.food.Measures;
import packpot.food.Nutrients;
import packpot.food.Preparations;
import packpot.food.UnsafeFoods;
import packpot.profile.Profiles;

/** Everything published that the program goes by, read once. */
public record Knowledge(
        Nutrients nutrients,
        FoodCatalogue foods,
        Preparations preparations,
        Measures measures,
        UnsafeFoods unsafeFoods,
        FoodEnergy foodEnergy,
        EnergyEquations energy,
        DogOverTime overTime,
        Profiles profiles,
        KitchenFigures kitchen) {

    /** What {@link #load} has read; nothing can change it. */
    private static @Nullable Knowledge read;

    /** Reads it once; a second thread that asks meanwhile waits for the first. */
    public static synchronized Knowledge load() {
        Knowledge known = read;
        if (known == null) {
            known = fromFiles();
            read = known;
        }
        return known;
    }

    private static Knowledge fromFiles() {
        Nutrients nutrients = Nutrients.load();
        EnergyEquations energy = EnergyEquations.load();
        return new Knowledge(
                nutrients,
                FoodCatalogue.load(),
                Preparations.load(),
                Measures.load(),
                UnsafeFoods.load(),
                FoodEnergy.load(),
                energy,
                DogOverTime.load(energy),
                Profiles.load(nutrients),
                KitchenFigures.load());
    }
}
