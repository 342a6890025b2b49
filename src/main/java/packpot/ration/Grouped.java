package packpot.ration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import packpot.household.Avoidance;
import packpot.household.Household;
import packpot.needs.DogNeed;
import packpot.needs.Needs;

/**
 * Dogs alike, in the place of each group one that stands for them.
 *
 * @param members of each group, by the large dog that they are together
 */
record Grouped(Map<DogNeed, List<DogNeed>> members) {
    /** Of the dogs that find no doses, so many more stand for themselves. */
    private static final int MORE_ALONE = 2;

    /** All dogs of a household, those together that are held to the same figures per kcal and may have the same foods. */
    static Grouped alike(Household household, Needs needs) {
        return of(List.copyOf(needs.dogs().stream()
                .collect(
                        Collectors.groupingBy(dog -> likeness(household, dog), LinkedHashMap::new, Collectors.toList()))
                .values()));
    }

    private static Grouped of(List<List<DogNeed>> groups) {
        Map<DogNeed, List<DogNeed>> members = new LinkedHashMap<>();
        groups.forEach(group -> members.put(DogNeed.together(group), group));
        return new Grouped(members);
    }

    Needs needs() {
        return new Needs(List.copyOf(members.keySet()));
    }

    Map<DogNeed, Double> shares(Map<DogNeed, Double> shares) {
        Map<DogNeed, Double> sums = new LinkedHashMap<>();
        members.forEach((together, dogs) -> sums.put(
                together,
                dogs.stream().mapToDouble(dog -> shares.getOrDefault(dog, 0.0)).sum()));
        return sums;
    }

    /** The smallest and the largest of those that found no doses stand for themselves. */
    Grouped apart(List<DogNeed> without) {
        List<List<DogNeed>> others = new ArrayList<>();
        for (List<DogNeed> group : members.values()) {
            List<DogNeed> wanting = group.stream()
                    .filter(without::contains)
                    .sorted(Comparator.comparingDouble(DogNeed::kcalPerDay))
                    .toList();
            Set<DogNeed> alone = wanting.size() <= MORE_ALONE
                    ? Set.copyOf(wanting)
                    : Set.of(wanting.get(0), wanting.get(wanting.size() - 1));
            alone.forEach(dog -> others.add(List.of(dog)));
            List<DogNeed> rest =
                    group.stream().filter(dog -> !alone.contains(dog)).toList();
            if (!rest.isEmpty()) {
                others.add(rest);
            }
        }
        return of(others);
    }

    /** What is the same for dogs that can be taken together. */
    private record Likeness(
            String profile, Object stage, int firstDay, int days, List<String> figures, String avoids) {}

    private static Likeness likeness(Household household, DogNeed dog) {
        return new Likeness(
                dog.profile().title(),
                dog.energy().stage(),
                dog.firstDay(),
                dog.days(),
                dog.requirements().stream()
                        .map(each -> each.limit() + " " + Math.rint(1e9 * Math.log(each.per1000Kcal())))
                        .toList(),
                household.pantry().stream()
                        .filter(item -> Avoidance.avoids(dog.dog(), item.food()))
                        .map(item -> item.food().id())
                        .collect(Collectors.joining(",")));
    }
}
