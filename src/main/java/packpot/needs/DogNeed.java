package packpot.needs;

import java.util.List;
import packpot.dog.Dog;
import packpot.dog.EnergyNeed;
import packpot.profile.ProfileStage;

/**
 * What one dog must get from the batch, or several dogs alike together.
 *
 * @param heads how many dogs; the first of them stands for all
 * @param energy its whole daily energy, with the equation
 * @param kcalPerDay of that, what the batch must bring, for all heads: treats and other food are taken off
 * @param firstDay first day of the batch on which it is there, the first of all being 0
 * @param days of the batch on which it is there
 * @param profile the column of the profile that it is held to
 * @param raisedBy how much minimums were raised, 1 when not at all
 * @param requirements every minimum, maximum and ratio, ceilings included; of two maximums the lower
 */
public record DogNeed(
        int heads,
        Dog dog,
        EnergyNeed energy,
        double kcalPerDay,
        int firstDay,
        int days,
        ProfileStage profile,
        double raisedBy,
        List<Requirement> requirements) {
    public DogNeed {
        requirements = List.copyOf(requirements);
    }

    /**
     * Dogs that are there on the same days and are held to the same figures per kcal, as one: what each of them gets added up
     * keeps to what all together are held to.
     */
    public static DogNeed together(List<DogNeed> alike) {
        DogNeed first = alike.get(0);
        return new DogNeed(
                alike.stream().mapToInt(DogNeed::heads).sum(),
                first.dog,
                first.energy,
                alike.stream().mapToDouble(DogNeed::kcalPerDay).sum(),
                first.firstDay,
                first.days,
                first.profile,
                first.raisedBy,
                first.requirements);
    }

    /** kcal that the batch must bring over the days on which the dog is there. */
    public double kcalPerBatch() {
        return kcalPerDay * days;
    }

    /** Names are unique in a household; hashing every figure would take longer than it saves. */
    @Override
    public int hashCode() {
        return dog.name().hashCode();
    }
}
