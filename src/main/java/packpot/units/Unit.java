package packpot.units;

import java.util.List;

/** A unit that people type, with its size in the base unit of its dimension (g, ml, kcal, day). */
public enum Unit {
    GRAM(Dimension.MASS, 1, "g", "gram", "grams", "gr"),
    KILOGRAM(Dimension.MASS, 1000, "kg", "kilo", "kilos", "kilogram", "kilograms"),
    MILLIGRAM(Dimension.MASS, 0.001, "mg", "milligram", "milligrams"),
    POUND(Dimension.MASS, 453.59237, "lb", "lbs", "pound", "pounds"),
    OUNCE(Dimension.MASS, 28.349523125, "oz", "ounce", "ounces"),

    MILLILITRE(Dimension.VOLUME, 1, "ml", "millilitre", "millilitres", "milliliter", "milliliters"),
    LITRE(Dimension.VOLUME, 1000, "l", "litre", "litres", "liter", "liters"),
    TEASPOON(Dimension.VOLUME, 3785.411784 / 768, "tsp", "teaspoon", "teaspoons"),
    TABLESPOON(Dimension.VOLUME, 3785.411784 / 256, "tbsp", "tablespoon", "tablespoons"),
    FLUID_OUNCE(Dimension.VOLUME, 3785.411784 / 128, "fl oz", "floz", "fluid ounce", "fluid ounces"),
    CUP(Dimension.VOLUME, 3785.411784 / 16, "cup", "cups"),
    PINT(Dimension.VOLUME, 3785.411784 / 8, "pt", "pint", "pints"),
    QUART(Dimension.VOLUME, 3785.411784 / 4, "qt", "quart", "quarts"),
    GALLON(Dimension.VOLUME, 3785.411784, "gal", "gallon", "gallons"),
    CUBIC_FOOT(Dimension.VOLUME, 28316.846592, "cu ft", "cuft", "cubic foot", "cubic feet", "ft3"),

    KILOCALORIE(Dimension.ENERGY, 1, "kcal", "kcals", "calories"),
    KILOJOULE(Dimension.ENERGY, 1 / 4.184, "kJ", "kj", "kilojoule", "kilojoules"),
    MEGAJOULE(Dimension.ENERGY, 1000 / 4.184, "MJ", "megajoule", "megajoules"),

    DAY(Dimension.TIME, 1, "day", "days", "d"),
    WEEK(Dimension.TIME, 7, "week", "weeks", "wk"),
    MONTH(Dimension.TIME, 365.25 / 12, "month", "months"),
    YEAR(Dimension.TIME, 365.25, "year", "years", "y", "yr", "yrs");

    private final Dimension dimension;
    private final double inBaseUnit;

    @SuppressWarnings("ImmutableEnumChecker") // a list made by List.of does not change
    private final List<String> spellings;

    Unit(Dimension dimension, double inBaseUnit, String... spellings) {
        this.dimension = dimension;
        this.inBaseUnit = inBaseUnit;
        this.spellings = List.of(spellings);
    }

    public Dimension dimension() {
        return dimension;
    }

    /** How many base units (g, ml, kcal, day) one of this unit is. */
    public double inBaseUnit() {
        return inBaseUnit;
    }

    /** The short form that is printed. */
    public String symbol() {
        return spellings.get(0);
    }

    List<String> spellings() {
        return spellings;
    }
}
