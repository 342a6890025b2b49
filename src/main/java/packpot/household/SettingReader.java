package packpot.household;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import packpot.dog.EnergyMethod;
import packpot.units.Price;
import packpot.units.UnitSystem;

/** What a scenario says of itself: its format, its units and money, the equations and rules that are reckoned with. */
final class SettingReader {
    private SettingReader() {}

    /** Whether the scenario is of a format that this program does not know, which is a fault then. */
    static boolean isNewer(Fields fields) {
        Integer format = fields.whole("packpot", 1, 1_000_000);
        if (format != null && format > ScenarioReader.FORMAT) {
            fields.fault(
                    "packpot",
                    "this scenario is of format " + format + ", this program reads formats up to "
                            + ScenarioReader.FORMAT + "; get a newer program");
            return true;
        }
        return false;
    }

    static String currency(Fields fields) {
        String code = fields.text("currency");
        if (code == null) {
            return "USD";
        }
        if (!code.matches("[A-Z]{3}")) {
            fields.fault("currency", "read \"" + code + "\", expected a code of three capitals such as USD or EUR");
            return "USD";
        }
        return code;
    }

    static Locale locale(Fields fields) {
        String tag = fields.text("locale");
        if (tag == null) {
            return Locale.US;
        }
        try {
            Locale locale = new Locale.Builder().setLanguageTag(tag).build();
            if (!locale.getLanguage().isEmpty()) {
                return locale;
            }
        } catch (IllformedLocaleException e) {
            // Told below, like a tag without a language.
        }
        fields.fault("locale", "read \"" + tag + "\", expected a language and a country such as en-US or de-DE");
        return Locale.US;
    }

    static @Nullable Double budget(Fields fields, String currency) {
        String text = fields.text("budget");
        Price price = text == null ? null : fields.parsed("budget", text, t -> Price.parse(t, currency));
        if (price != null && price.per() != null) {
            fields.fault("budget", "read \"" + text + "\", expected an amount of money such as \"$60\"");
        }
        return price == null ? null : (Double) price.amount();
    }

    static Rules rules(Fields fields, JsonNode usual) {
        Double margin = fields.share("margin", 0.5);
        return new Rules(
                margin == null ? usual.path("margin").doubleValue() : margin,
                usual.path("energyBand").doubleValue(),
                usual.path("roundingReserve").doubleValue(),
                usual.path("sodiumMostGramsPer1000Kcal").doubleValue(),
                usual.path("leftoverWorthShare").doubleValue(),
                usual.path("roundingGrams").path("food").doubleValue(),
                usual.path("roundingGrams").path("oil").doubleValue());
    }

    /** Which equations give a dog's energy. */
    record Equations(EnergyMethod.Maintenance maintenance, EnergyMethod.Growth growth) {}

    static Equations equations(Fields fields) {
        EnergyMethod.Maintenance maintenance = fields.choice(
                "energyEquation", List.of(EnergyMethod.Maintenance.values()), EnergyMethod.Maintenance::key);
        EnergyMethod.Growth growth =
                fields.choice("growthEquation", List.of(EnergyMethod.Growth.values()), EnergyMethod.Growth::key);
        return new Equations(
                maintenance == null ? EnergyMethod.Maintenance.BY_ACTIVITY : maintenance,
                growth == null ? EnergyMethod.Growth.KLEIN : growth);
    }

    static UnitSystem units(Fields fields) {
        UnitSystem units = fields.choice(
                "units", List.of(UnitSystem.values()), u -> u.name().toLowerCase(Locale.ROOT));
        return units == null ? UnitSystem.US : units;
    }
}
