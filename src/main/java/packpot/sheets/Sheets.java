package packpot.sheets;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import packpot.audit.DogAudit;
import packpot.audit.NutrientLine;
import packpot.dog.Dog;
import packpot.explain.Losses;
import packpot.explain.StandIn;
import packpot.food.Supplement;
import packpot.household.PantryItem;
import packpot.plan.FeedingCalendar;
import packpot.plan.Plan;
import packpot.units.UnitSystem;
import packpot.words.Term;
import packpot.words.Texts;

/** The sheets of one plan as one page of HTML that needs nothing else, well-formed as XML too, from which the PDF is made. */
public final class Sheets {
    /** Letters that have room in the first column of every table. */
    private static final int LONGEST_WORD = 26;

    private static final int FOODS_OF_A_LABEL = 2;

    private static final int LETTERS_OF_A_NAME = 16;

    private static final List<String> SPOONS = List.of("tsp", "tbsp", "cup");

    /** NIST Handbook 44, appendix C. */
    private static final double CM_PER_INCH = 2.54;

    private final SheetSource source;
    private final Texts texts;
    private final Wording wording;
    private final Paper paper;
    private final LabelSheet labelSheet;
    private final CookDay cookDay;
    private final List<Labels.Label> labels;

    /** Sheets in one language, for one paper and one sheet of labels. */
    public Sheets(SheetSource source, Texts texts, Paper paper, LabelSheet labelSheet) {
        this.source = source;
        this.texts = texts;
        this.wording =
                new Wording(texts, source.household().units(), source.plan().currency());
        this.paper = paper;
        this.labelSheet = labelSheet;
        this.cookDay = CookDay.of(source);
        this.labels = Labels.of(source, texts);
    }

    /** The page. */
    public String html() {
        StringOutput output = new StringOutput(1 << 18);
        TemplateEngine.createPrecompiled(null, ContentType.Html, null, "gg.jte.generated.precompiled")
                .render("sheets/page.jte", this, output);
        return output.toString();
    }

    public SheetSource source() {
        return source;
    }

    public Plan plan() {
        return source.plan();
    }

    public Texts texts() {
        return texts;
    }

    public LabelSheet labelSheet() {
        return labelSheet;
    }

    public CookDay cookDay() {
        return cookDay;
    }

    public List<Labels.Label> labels() {
        return labels;
    }

    private UnitSystem units() {
        return source.household().units();
    }

    /** A sentence of the bundle. */
    public String say(String key, Object... values) {
        return texts.say(key, values);
    }

    public String grams(double grams) {
        return wording.grams(grams);
    }

    /** Pounds and ounces, or kilograms. */
    public String weight(double grams) {
        return wording.weight(grams);
    }

    public String bodyWeight(double kilograms) {
        return wording.bodyWeight(kilograms);
    }

    public String volume(double millilitres) {
        return wording.volume(millilitres);
    }

    public String scoop(double millilitres) {
        return wording.scoop(millilitres);
    }

    public String money(double amount) {
        return wording.money(amount);
    }

    public String celsius(double celsius) {
        return wording.celsius(celsius);
    }

    /** Scoops by volume of cooked food. */
    public String scoopOf(double cookedGrams) {
        return scoop(cookedGrams / source.household().kitchen().mixDensityGramsPerMl());
    }

    /** The name of a food by its id. */
    public String food(String id) {
        return texts.food(id, source.item(id).food().label());
    }

    public String nutrient(String key, String english) {
        return texts.name("nutrient", key, english);
    }

    /** Words of a section of the shop, a life stage or a preparation. */
    public String words(String kind, String english) {
        return texts.name(Term.ofWords(kind, english));
    }

    /** Sections of the shop with something in them, in the order of their names. */
    public List<String> sections() {
        return plan().shopping().stream()
                .map(Plan.Purchase::section)
                .distinct()
                .sorted()
                .toList();
    }

    /** What takes the place of a food that is out; null when that was not asked or nothing stands out. */
    public Losses.@Nullable Loss standIn(String food) {
        return source.standIns().stream()
                .filter(loss -> loss.food().equals(food))
                .findFirst()
                .orElse(null);
    }

    /** The dog's nutrients as they were reckoned. */
    public DogAudit audit(int dog) {
        return source.verdict().dogs().get(dog);
    }

    /** Days on which a dog is to be weighed. */
    public List<FeedingCalendar.Event> weighings(String dog) {
        return source.calendar().events().stream()
                .filter(event -> event.kind() == FeedingCalendar.Kind.WEIGH)
                .filter(event -> event.about().equals(dog))
                .toList();
    }

    /** What to do on a day of the calendar. */
    public String event(FeedingCalendar.Event event) {
        return EventWords.of(this, event);
    }

    /** Sources of what the sheet for the veterinarian says, each once. */
    public List<String> sources() {
        return source.plan().dogs().stream()
                .flatMap(dog -> java.util.stream.Stream.of(dog.profile(), dog.energySource()))
                .distinct()
                .toList();
    }

    /** How a nutrient's unit is printed. */
    public String unit(String unit) {
        return unit.equals("ug") ? "µg" : texts.amount(unit);
    }

    /** What the sheet of a shop says of a food that is out. */
    public String standInWords(Losses.Loss loss) {
        StandIn standIn = loss.standIn();
        Double extra = loss.extraCost();
        if (loss.end() == Losses.End.IMPOSSIBLE) {
            return say("out.impossible");
        }
        if (standIn == null || extra == null) {
            return "";
        }
        return say("out.standIn", texts.food(standIn.food(), standIn.label()), money(extra));
    }

    /** The same style for print and screen. */
    public String printStyle() {
        // Sizes of the pages are those of the paper at hand; labels lie on sheets without margins.
        String size = css(paper.widthMm()) + "mm " + css(paper.heightMm()) + "mm";
        return file("base.css")
                + file("print.css")
                        .replace("PAPER_SIZE", size)
                        .replace("PAPER_WIDTH", css(paper.widthMm()) + "mm")
                        // A page that is filled to the last hair would be followed by an empty one.
                        .replace("PAPER_HEIGHT", css(paper.heightMm() - 1) + "mm")
                        .replace("LABEL_WIDTH", css(labelSheet.widthMm()) + "mm")
                        .replace("LABEL_HEIGHT", css(labelSheet.heightMm()) + "mm")
                        .replace("PAGE_WORD", say("page"));
    }

    /** The style for screens alone, which no setter of pages reads. */
    public String screenStyle() {
        return file("screen.css");
    }

    /** A length as CSS and SVG write it. */
    public String css(double length) {
        return String.format(Locale.ROOT, "%.2f", length).replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    /** Millimetres for people. */
    public String mm(double millimetres) {
        return texts.number(millimetres, 1) + " mm";
    }

    /** So much of a name as there is room for. */
    public String clip(String name, int most) {
        return name.codePointCount(0, name.length()) <= most
                ? name
                : name.substring(0, name.offsetByCodePoints(0, most - 1)) + "…";
    }

    /** The class of a cell whose words are too long for a column, so that they may be broken; null for any other. */
    public @Nullable String wide(String words) {
        boolean tooLong = Arrays.stream(words.split("\\s+")).anyMatch(word -> word.length() > LONGEST_WORD);
        return tooLong ? "broken" : null;
    }

    /**
     * Whether a supplement is counted and not weighed: the grams of a tablet are those of its salt alone, and a scale would
     * show those of the tablet.
     */
    public boolean isCounted(String food) {
        Supplement supplement = source.item(food).food().supplement();
        return supplement != null && !SPOONS.contains(supplement.measureName());
    }

    /** When which bags go into the freezer. */
    public List<FeedingCalendar.Event> freezings() {
        return source.calendar().events().stream()
                .filter(event -> event.kind() == FeedingCalendar.Kind.FREEZE)
                .toList();
    }

    /** A figure of models/kitchen.json. */
    private double kitchen(String key) {
        return source.knowledge().kitchen().number(key);
    }

    /** What the middle of the pot reaches. */
    public String potTemperature() {
        return celsius(kitchen("reheatCelsius"));
    }

    /** How the batch is cooled. */
    public String cooling() {
        double deepCm = kitchen("coolingDepthCentimetresMax");
        String deep = units() == UnitSystem.METRIC
                ? texts.number(deepCm) + " cm"
                : texts.number(deepCm) + " cm (" + Math.round(deepCm / CM_PER_INCH) + " in)";
        return say("cook.cool", texts.number(kitchen("roomTemperatureHoursMax")), deep);
    }

    /** How a dog comes to new food: the share of it on the days of the published schedule. */
    public String changeOfFood() {
        List<Double> shares = source.knowledge().kitchen().newFoodShares((int) kitchen("transitionDaysDefault"));
        Map<Double, List<Integer>> days = new LinkedHashMap<>();
        for (int day = 1; day < shares.size(); day++) {
            days.computeIfAbsent(shares.get(day - 1), share -> new ArrayList<>())
                    .add(day);
        }
        List<String> steps = new ArrayList<>();
        days.forEach((share, on) ->
                steps.add(say("portions.step", texts.number(100 * share, 0) + " %", on.get(0), on.get(on.size() - 1))));
        return say("portions.change", String.join(", ", steps));
    }

    /** When a dog is weighed that has no days of its own for it. */
    public String usualWeighing() {
        return say("portions.weighUsual", texts.number(kitchen("vetWeightChangePercent")) + " %");
    }

    /** What is in a bag, by the foods that there is most of. */
    public String what() {
        return plan().pot().stream()
                .filter(each -> !each.stirredIn())
                .sorted(Comparator.comparingDouble(each -> -each.cookedGrams()))
                .limit(FOODS_OF_A_LABEL)
                .map(each -> texts.food(each.food(), each.label()))
                .collect(Collectors.joining(", "));
    }

    /** All dogs that are fed from the batch. */
    public String dogNames() {
        return plan().dogs().stream()
                .map(dog -> clip(dog.name(), LETTERS_OF_A_NAME))
                .collect(Collectors.joining(", "));
    }

    /** What a dog must not get. */
    public String avoided(Dog dog) {
        return String.join(", ", dog.avoids());
    }

    /** Days of the batch as dates. */
    public String dates(List<Integer> days) {
        return String.join(
                ", ",
                days.stream()
                        .map(day -> texts.shortDate(plan().start().plusDays(day - 1L)))
                        .toList());
    }

    public String datesOf(List<FeedingCalendar.Event> events) {
        return String.join(
                ", ",
                events.stream().map(event -> texts.shortDate(event.date())).toList());
    }

    /** Points of a line over the weeks, of weight or of energy. */
    public String points(List<Charts.Week> weeks, double step, boolean weight) {
        List<String> points = new ArrayList<>();
        for (int i = 0; i < weeks.size(); i++) {
            double share = weight ? weeks.get(i).weight() : weeks.get(i).energy();
            points.add(css(40 + i * step) + "," + css(150 - 130 * share));
        }
        return String.join(" ", points);
    }

    /** Supplements with the strength of the product that was reckoned with. */
    public List<String> supplements() {
        List<String> lines = new ArrayList<>();
        for (Plan.Purchase line : plan().shopping()) {
            Supplement supplement = source.item(line.food()).food().supplement();
            if (supplement != null) {
                lines.add(say(
                        "vet.supplement",
                        texts.food(line.food(), line.label()),
                        texts.name("form", line.food(), texts.amount(supplement.form())),
                        texts.name("strength", line.food(), texts.amount(supplement.activeShare())),
                        texts.amount(supplement.measureName()),
                        grams(supplement.gramsPerMeasure())));
            }
        }
        return lines;
    }

    /** The marks of a line: too little, too much, recalled, thin. */
    public String marks(NutrientLine line) {
        return (line.tooLittle() ? say("short") + " " : "")
                + (line.tooMuch() ? say("over") + " " : "")
                + (line.fromMemory() ? "m" : "")
                + (line.thin() ? "?" : "");
    }

    /** Nutrients of which much of the energy has no figure, each once. */
    public List<String> thin() {
        Map<String, String> lines = new LinkedHashMap<>();
        for (DogAudit dog : source.verdict().dogs()) {
            dog.nutrients().stream()
                    .filter(NutrientLine::thin)
                    .forEach(line -> lines.putIfAbsent(
                            line.key(),
                            say(
                                    "vet.thinLine",
                                    nutrient(line.key(), line.label()),
                                    texts.percent(line.unknownEnergyShare()),
                                    foods(line.unknownFoods()))));
        }
        return List.copyOf(lines.values());
    }

    /** Foods of the pantry by their labels, between semicolons. */
    private String foods(List<String> labels) {
        return labels.stream()
                .map(label -> source.household().pantry().stream()
                        .map(PantryItem::food)
                        .filter(food -> food.label().equals(label))
                        .findFirst()
                        .map(food -> texts.food(food.id(), label))
                        .orElse(label))
                .collect(Collectors.joining("; "));
    }

    /** A style sheet, or another file beside the templates. */
    public static String file(String name) {
        try (InputStream in = Sheets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
