package packpot.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A mend typed from the printed page into a recipe file, as somebody at the kitchen table would. */
final class TypedBack {
    private static final Pattern POT =
            Pattern.compile("\\s+(?:-|[\\d.,]+ m?g)\\s+([\\d.,]+ m?g)\\s+(?:new|same|from 0|[+-]\\d+ %)\\s+(\\S.*)");
    private static final Pattern DOG = Pattern.compile("  (\\S.*?) +([\\d,]+) g a day of the cooked pot");
    private static final Pattern DOSE =
            Pattern.compile("\\s*\\+ (.*): ([\\d/ ]+) (\\p{L}.*), (once a day|on days? [\\d, ]+)(?:;.*)?");
    private static final Pattern COUNTED = Pattern.compile("tablet|capsule|soft gel|portion");

    private final int days;
    private final List<String> foods = new ArrayList<>();
    private final List<String> additions = new ArrayList<>();

    private TypedBack(int days) {
        this.days = days;
    }

    /** The mend of this number as a recipe. */
    static String recipe(List<String> page, int mend, int days) {
        TypedBack typed = new TypedBack(days);
        int first = 0;
        while (!page.get(first).startsWith("Mend " + mend)) {
            first++;
        }
        List<String> lines = new ArrayList<>();
        for (String line : page.subList(first + 1, page.size())) {
            if (line.isBlank() || line.contains(" a day for what is used")) {
                break;
            }
            boolean goesOn = !lines.isEmpty()
                    && !POT.matcher(line).matches()
                    && !DOG.matcher(line).matches()
                    && !line.strip().startsWith("+");
            if (goesOn) {
                lines.set(lines.size() - 1, lines.get(lines.size() - 1) + " " + line.strip());
            } else {
                lines.add(line);
            }
        }
        String dog = "";
        for (String line : lines) {
            Matcher food = POT.matcher(line);
            Matcher bowl = DOG.matcher(line);
            Matcher dose = DOSE.matcher(line);
            if (food.matches()) {
                typed.food(food.group(1), food.group(2));
            } else if (bowl.matches()) {
                dog = bowl.group(1);
            } else if (dose.matches()) {
                typed.dose(dog, dose);
            }
        }
        return "{\"days\": " + days + ", \"foods\": [" + String.join(", ", typed.foods) + "], \"additions\": ["
                + String.join(", ", typed.additions) + "]}";
    }

    private void food(String weight, String words) {
        if (weight.equals("0 g")) {
            return;
        }
        // Nobody types the remark behind a food.
        String[] parts = words.replaceAll(" \\(a food, .*\\)$", "").split(": ", 2);
        boolean counted = parts.length == 2 && COUNTED.matcher(parts[1]).find();
        foods.add("{\"food\": \"" + parts[0] + "\", \"amount\": \"" + (counted ? parts[1] : weight.replace(",", ""))
                + "\"}");
    }

    private void dose(String dog, Matcher dose) {
        String when = dose.group(4);
        double perDay = when.equals("once a day") ? 1 : (double) when.split(",").length / days;
        String amount =
                perDay == 1 ? dose.group(2) : String.format(Locale.ROOT, "%.6f", perDay * Fraction.of(dose.group(2)));
        additions.add("{\"dog\": \"" + dog + "\", \"food\": \"" + dose.group(1) + "\", \"amount\": \"" + amount + " "
                + dose.group(3) + "\"}");
    }

    /** A number with a fraction, as doses are printed. */
    private static final class Fraction {
        static double of(String text) {
            double sum = 0;
            for (String word : text.strip().split(" ")) {
                String[] parts = word.split("/");
                sum += Double.parseDouble(parts[0]) / (parts.length == 2 ? Double.parseDouble(parts[1]) : 1);
            }
            return sum;
        }
    }
}
