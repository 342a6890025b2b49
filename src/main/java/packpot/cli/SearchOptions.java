package packpot.cli;

import picocli.CommandLine.Option;

/** How long and how sharply plans are searched, where a command searches each of its plans alike. */
final class SearchOptions {
    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            defaultValue = "20",
            description = "longest time to search for each plan; default: ${DEFAULT-VALUE}")
    private double seconds;

    @Option(
            names = "--gap",
            paramLabel = "PERCENT",
            description = "stop when the cost is proved to be within this; default: ${DEFAULT-VALUE}")
    private double gapPercent;

    /** Options whose gap is this where a person gives none. */
    SearchOptions(double usualGapPercent) {
        gapPercent = usualGapPercent;
    }

    double seconds() {
        return seconds;
    }

    double gapPercent() {
        return gapPercent;
    }
}
