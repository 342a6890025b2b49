package packpot.household;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes of one food of the pantry. */
final class FoodChange {
    private static final Pattern SHARE =
            Pattern.compile("(\\+|-|up|down)\\s*(?:by\\s+)?(\\d*\\.?\\d+)\\s*%", Pattern.CASE_INSENSITIVE);
    private static final Pattern NUMBER = Pattern.compile("\\d*\\.?\\d+");
    private static final int DECIMALS = 4;
    private static final List<String> KNOWN =
            List.of("out of stock", "in stock", "price", "pack", "on hand", "must use", "at most");

    private FoodChange() {}

    static void apply(ObjectNode food, String what, Places places) {
        String plain = what.toLowerCase(Locale.ROOT);
        String name = PantryWords.name(food);
        if (plain.equals("out of stock")) {
            // What is not sold has neither price nor pack; what is in the house may still be counted.
            if (places.take(name, "price") && places.take(name, "pack") && places.take(name, "stock")) {
                food.put("outOfStock", true);
            }
        } else if (plain.equals("in stock")) {
            if (places.take(name, "stock")) {
                food.remove("outOfStock");
            }
        } else if (plain.startsWith("price ")) {
            price(food, what.substring("price ".length()).strip(), places);
        } else if (plain.startsWith("pack ")) {
            set(food, "pack", what.substring("pack ".length()), places);
        } else if (plain.startsWith("on hand ")) {
            set(food, "onHand", what.substring("on hand ".length()), places);
        } else if (plain.equals("must use all")) {
            if (places.take(name, "mustUse")) {
                food.put("mustUse", true);
            }
        } else if (plain.startsWith("must use ")) {
            set(food, "mustUse", what.substring("must use ".length()), places);
        } else if (plain.startsWith("at most ")) {
            set(food, "atMost", what.substring("at most ".length()), places);
        } else {
            places.fault("\"" + what + "\" is nothing that a food can do" + Nearest.advice(what, KNOWN, 1) + "; known: "
                    + String.join(", ", KNOWN));
        }
    }

    private static void set(ObjectNode food, String field, String value, Places places) {
        if (places.take(PantryWords.name(food), field)) {
            food.put(field, value.strip());
        }
    }

    private static void price(ObjectNode food, String value, Places places) {
        Matcher share = SHARE.matcher(value);
        if (!share.matches()) {
            set(food, "price", value, places);
            return;
        }
        String old = food.path("price").asText();
        Matcher number = NUMBER.matcher(old);
        if (!number.find()) {
            places.fault("\"" + PantryWords.name(food) + "\" has no price in the scenario that could go up or down;"
                    + " give one, such as \"price $4.49\"");
            return;
        }
        boolean down = share.group(1).equals("-") || share.group(1).equalsIgnoreCase("down");
        BigDecimal part = new BigDecimal(share.group(2)).movePointLeft(2);
        BigDecimal factor = down ? BigDecimal.ONE.subtract(part) : BigDecimal.ONE.add(part);
        if (factor.signum() < 0) {
            places.fault("a price cannot fall by more than 100 %");
            return;
        }
        if (places.take(PantryWords.name(food), "price")) {
            String changed = new BigDecimal(number.group())
                    .multiply(factor)
                    .setScale(DECIMALS, RoundingMode.HALF_UP)
                    .stripTrailingZeros()
                    .toPlainString();
            food.put("price", old.substring(0, number.start()) + changed + old.substring(number.end()));
        }
    }
}
