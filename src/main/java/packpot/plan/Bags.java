package packpot.plan;

import java.util.ArrayList;
import java.util.List;

/** Names numbered bags, and lists of names, in words. */
final class Bags {

    private Bags() {}

    /** Such as "bag 4", "bags 4 and 5", "bags 4 to 9 and 12"; numbers are in their order. */
    static String words(List<Integer> numbers) {
        List<String> runs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= numbers.size(); i++) {
            if (i == numbers.size() || numbers.get(i) != numbers.get(i - 1) + 1) {
                int first = numbers.get(from);
                int last = numbers.get(i - 1);
                if (last == first + 1) {
                    runs.add(Integer.toString(first));
                }
                runs.add(last <= first + 1 ? Integer.toString(last) : first + " to " + last);
                from = i;
            }
        }
        return (numbers.size() == 1 ? "bag " : "bags ") + list(runs);
    }

    /** Such as "Moss, Pip and Wren". */
    static String list(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }
}
