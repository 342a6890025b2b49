package packpot.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import packpot.solver.LinearModel.Variable;

/** What is written can be read and solved by a solver that shares no code with ours. */
class MpsWriterTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    static Stream<Arguments> models() {
        return Stream.of(
                Arguments.of("Stigler", DietModels.stigler().model()),
                Arguments.of("diet of six", DietModels.diet6().model()),
                Arguments.of("diet of nine", DietModels.diet9().model()),
                Arguments.of("knapsack", knapsack()),
                Arguments.of("ranges", ranges()),
                Arguments.of("negative lower bounds", negative()),
                Arguments.of("free and below only", free()),
                Arguments.of("whole numbers without upper bound", wholeWithoutUpperBound()),
                Arguments.of("negative whole numbers", negativeWhole()));
    }

    @Tag("native")
    @ParameterizedTest(name = "{0}")
    @MethodSource("models")
    void anotherSolverReadsTheFileAndFindsTheSameOptimum(String name, LinearModel<String> model) {
        Solution ours = new OrToolsSolver().solve(model, new SolveLimits(20, 0));
        Optimisation.Result theirs = read(MpsWriter.write(model, name)).minimise();
        assertThat(theirs.getState().isOptimal()).as(theirs.getState().name()).isTrue();
        assertThat(theirs.getValue())
                .isCloseTo(ours.objective(), within(1e-6 * Math.max(1, Math.abs(ours.objective()))));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("models")
    void theFileHoldsEveryRowAndColumn(String name, LinearModel<String> model) {
        ExpressionsBasedModel read = read(MpsWriter.write(model, name));
        assertThat(read.countVariables()).isEqualTo(model.variables().size());
        assertThat(read.constraints().count()).isEqualTo(model.rows().size());
        assertThat(read.getVariables().stream().filter(v -> v.isInteger()).count())
                .isEqualTo(model.variables().stream().filter(Variable::integer).count());
    }

    @Test
    void namesOfPeopleStandInCommentsOnOneLineEach() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("rice,\nwhite", 0, 1);
        model.objective().add(1, x);
        model.atLeast("Moss: zinc\r\nENDATA", new Expression().add(1, x), 0.5, null);
        String text = MpsWriter.write(model, "two words");
        assertThat(text).startsWith("* R1 Moss: zinc  ENDATA\n* C1 rice, white\nNAME two_words\nROWS\n");
        assertThat(text.lines().filter("ENDATA"::equals)).hasSize(1);
        assertThat(text).endsWith("ENDATA\n");
    }

    /** Every kind of row and bound that the format knows, section by section. */
    @Test
    void theFileIsWhatTheFormatSays() {
        LinearModel<String> model = new LinearModel<>();
        Variable plain = model.variable("plain", 0, INF);
        Variable free = model.variable("free", -INF, INF);
        Variable below = model.variable("below", -INF, 4);
        Variable count = model.whole("count", 2, INF);
        Variable choice = model.choice("choice");
        Variable held = model.variable("held", 0.5, 0.5);
        model.variable("unused", 0, 1e15);
        model.objective().add(1, plain).add(-2.5, choice);
        model.atLeast("least", new Expression().add(3, plain).add(1, free), 0, null);
        model.atMost("most", new Expression().add(4, below).add(1, count), 7, null);
        model.equal("equal", new Expression().add(5, held), 2.5, null);
        model.row("both", new Expression().add(6, choice), -1, 3, null);
        assertThat(MpsWriter.write(model, "m")).isEqualTo("""
                * R1 least
                * R2 most
                * R3 equal
                * R4 both
                * C1 plain
                * C2 free
                * C3 below
                * C4 count
                * C5 choice
                * C6 held
                * C7 unused
                NAME m
                ROWS
                 N COST
                 G R1
                 L R2
                 E R3
                 G R4
                COLUMNS
                 C1 COST 1
                 C1 R1 3
                 C2 R1 1
                 C3 R2 4
                 MARKER 'MARKER' 'INTORG'
                 C4 R2 1
                 C5 COST -2.5
                 C5 R4 6
                 MARKER 'MARKER' 'INTEND'
                 C6 R3 5
                 C7 COST 0
                RHS
                 RHS R2 7
                 RHS R3 2.5
                 RHS R4 -1
                RANGES
                 RANGE R4 4
                BOUNDS
                 FR BND C2
                 MI BND C3
                 UP BND C3 4
                 LO BND C4 2
                 PL BND C4
                 UP BND C5 1
                 LO BND C6 0.5
                 UP BND C6 0.5
                 UP BND C7 1.0E15
                ENDATA
                """);
    }

    @Test
    void whatIsNotThereHasNoSection() {
        LinearModel<String> model = new LinearModel<>();
        model.whole("n", 0, 3);
        assertThat(MpsWriter.write(model, "m"))
                .isEqualTo("* C1 n\nNAME m\nROWS\n N COST\nCOLUMNS\n MARKER 'MARKER' 'INTORG'\n C1 COST 0\n"
                        + " MARKER 'MARKER' 'INTEND'\nRHS\nBOUNDS\n UP BND C1 3\nENDATA\n");
    }

    @Test
    void theSameModelIsWrittenTheSameTwice() {
        assertThat(MpsWriter.write(DietModels.stigler().model(), "a"))
                .isEqualTo(MpsWriter.write(DietModels.stigler().model(), "a"));
    }

    @Test
    void figuresKeepTheirLastDigit() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", 0.1 + 0.2, 1e300);
        model.objective().add(1.0 / 3, x);
        assertThat(MpsWriter.write(model, "digits"))
                .contains(" C1 COST 0.3333333333333333\n")
                .contains(" LO BND C1 0.30000000000000004\n")
                .contains(" UP BND C1 1.0E300\n");
    }

    private static ExpressionsBasedModel read(String text) {
        return ExpressionsBasedModel.parse(
                new ByteArrayInputStream(inFixedColumns(text).getBytes(StandardCharsets.UTF_8)),
                ExpressionsBasedModel.FileFormat.MPS);
    }

    /** The other reader knows only the format's older form, whose fields start at columns 2, 5, 15 and 25. */
    private static String inFixedColumns(String text) {
        StringBuilder fixed = new StringBuilder();
        String section = "";
        for (String line : text.lines().filter(l -> !l.startsWith("*")).toList()) {
            if (line.startsWith(" ")) {
                String[] words = line.strip().split(" ");
                boolean typed = section.equals("ROWS") || section.equals("BOUNDS");
                String[] fields = {typed ? words[0] : "", "", "", ""};
                System.arraycopy(words, typed ? 1 : 0, fields, 1, words.length - (typed ? 1 : 0));
                fixed.append(String.format(" %-3s%-10s%-10s%s", (Object[]) fields)
                                .stripTrailing())
                        .append('\n');
            } else {
                section = line;
                fixed.append(line).append('\n');
            }
        }
        return fixed.toString();
    }

    private static LinearModel<String> knapsack() {
        LinearModel<String> model = new LinearModel<>();
        double[] values = {3, 5, 6, 2.5};
        double[] weights = {2, 4, 5, 1.5};
        Expression weight = new Expression();
        for (int i = 0; i < values.length; i++) {
            Variable take = model.choice("take " + i);
            model.objective().add(-values[i], take);
            weight.add(weights[i], take);
        }
        model.atMost("room", weight, 9.5, null);
        return model;
    }

    private static LinearModel<String> ranges() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", 0, 10);
        Variable y = model.whole("y", 0, 10);
        model.objective().add(-1, x).add(-3, y);
        model.row("sum", new Expression().add(1, x).add(2, y), 4, 9.5, null);
        model.row("difference", new Expression().add(1, x).add(-1, y), -2.5, -0.5, null);
        return model;
    }

    private static LinearModel<String> negative() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", -5, -1);
        Variable y = model.variable("y", -3, INF);
        model.objective().add(1, x).add(2, y);
        model.atLeast("sum", new Expression().add(1, x).add(1, y), -6, null);
        return model;
    }

    private static LinearModel<String> free() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", Double.NEGATIVE_INFINITY, INF);
        Variable y = model.variable("y", Double.NEGATIVE_INFINITY, 4);
        model.objective().add(1, x).add(-1, y);
        model.atLeast("floor", new Expression().add(1, x).add(-2, y), -11, null);
        model.equal("tie", new Expression().add(1, x).add(1, y), 1.5, null);
        return model;
    }

    private static LinearModel<String> wholeWithoutUpperBound() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.whole("x", 0, INF);
        Variable y = model.whole("y", 2, INF);
        model.objective().add(2, x).add(3, y);
        model.atLeast("need", new Expression().add(3, x).add(4, y), 100, null);
        return model;
    }

    private static LinearModel<String> negativeWhole() {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.whole("x", -7, 7);
        Variable y = model.variable("y", -2.5, 2.5);
        model.objective().add(1, x).add(1, y);
        model.atLeast("floor", new Expression().add(2, x).add(3, y), -13, null);
        return model;
    }
}
