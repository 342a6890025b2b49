package packpot;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Dependencies run one way, from the scenario to the report. */
class ArchitectureTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("packpot");

    /** What a package may use of ours beside itself. */
    private static final Map<String, List<String>> MAY_USE = Map.ofEntries(
            Map.entry("units", List.of()),
            Map.entry("data", List.of()),
            Map.entry("words", List.of("units")),
            Map.entry("solver", List.of()),
            Map.entry("search", List.of("solver")),
            Map.entry("food", List.of("words", "units", "data")),
            Map.entry("dog", List.of("words", "units", "data")),
            Map.entry("profile", List.of("words", "food", "dog", "data", "units")),
            Map.entry("household", List.of("words", "profile", "food", "dog", "data", "units")),
            Map.entry("needs", List.of("words", "household", "profile", "food", "dog", "data", "units")),
            Map.entry("plan", List.of("words", "needs", "household", "profile", "food", "dog", "data", "units")),
            Map.entry("spread", List.of("audit", "plan", "household", "food", "data")),
            Map.entry(
                    "ration",
                    List.of(
                            "plan",
                            "needs",
                            "solver",
                            "household",
                            "profile",
                            "food",
                            "dog",
                            "data",
                            "units",
                            "words")));

    /** What a package must never use, where the rest is free. */
    private static final Map<String, List<String>> NEVER = Map.of(
            "audit", List.of("ration", "search", "solver", "spread", "explain", "report", "sheets", "page", "cli"),
            "explain", List.of("report", "sheets", "page", "cli"),
            "report", List.of("ration", "search", "solver", "sheets", "page", "cli"),
            "sheets", List.of("ration", "search", "solver", "report", "page", "cli"));

    static Stream<Arguments> allowed() {
        return MAY_USE.entrySet().stream().map(entry -> Arguments.of(entry.getKey(), entry.getValue()));
    }

    static Stream<Arguments> forbidden() {
        return NEVER.entrySet().stream().map(entry -> Arguments.of(entry.getKey(), entry.getValue()));
    }

    private static String in(String name) {
        return "packpot." + name + "..";
    }

    @ParameterizedTest(name = "{0} uses of ours at most {1}")
    @MethodSource("allowed")
    void aPackageUsesOnlyWhatLiesBelowIt(String name, List<String> below) {
        List<String> packages = new ArrayList<>(below);
        packages.add(name);
        classes()
                .that()
                .resideInAPackage(in(name))
                .should()
                .onlyDependOnClassesThat(JavaClass.Predicates.resideInAnyPackage(
                                packages.stream().map(ArchitectureTest::in).toArray(String[]::new))
                        .or(JavaClass.Predicates.resideOutsideOfPackage("packpot..")))
                .check(CLASSES);
    }

    @ParameterizedTest(name = "{0} never uses {1}")
    @MethodSource("forbidden")
    void aPackageNeverUsesWhatComesAfterIt(String name, List<String> never) {
        noClasses()
                .that()
                .resideInAPackage(in(name))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(never.stream().map(ArchitectureTest::in).toArray(String[]::new))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    @Test
    void noTwoPackagesUseEachOther() {
        slices().matching("packpot.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void nothingUsesTheCommandLine() {
        noClasses()
                .that()
                .resideOutsideOfPackage(in("cli"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(in("cli"))
                .check(CLASSES);
    }

    @Test
    void theSolverLibraryStaysBehindItsDoor() {
        noClasses()
                .that()
                .resideOutsideOfPackage(in("solver"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("com.google.ortools..", "com.google.protobuf..")
                .check(CLASSES);
    }

    @Test
    void filesAndConsoleAreTouchedAtTheEdgesAlone() {
        noClasses()
                .that()
                .resideOutsideOfPackages(in("household"), in("report"), in("cli"), in("data"), in("solver"), in("page"))
                .should()
                .dependOnClassesThat(JavaClass.Predicates.resideInAPackage("java.nio.file..")
                        .or(JavaClass.Predicates.assignableTo(java.io.File.class))
                        .or(JavaClass.Predicates.assignableTo(java.io.PrintStream.class)))
                .check(CLASSES);
    }

    @Test
    void theConsoleIsTheCommandLinesOwn() {
        noClasses()
                .that()
                .resideOutsideOfPackages(in("cli"), in("report"))
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(CLASSES);
    }
}
