package packpot.cli;

import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program; does its work in subcommands. */
@Command(
        name = "packpot",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        description = {
            "Plans one home-cooked batch for a household of dogs: what to buy, what goes into the pot, how it is"
                    + " split, and what each bowl still needs, at least cost and checked against a published nutrient"
                    + " profile for every dog.",
            "",
            "It is not a veterinarian. Show the plan to yours before you feed it."
        },
        footerHeading = "%nExample:%n",
        footer = "  packpot plan scenarios/three-adults.json",
        subcommands = {
            PlanCommand.class,
            CheckCommand.class,
            WhatIfCommand.class,
            LossesCommand.class,
            WhyNotCommand.class,
            CalendarCommand.class,
            SessionsCommand.class,
            PotsCommand.class,
            SheetsCommand.class,
            PageCommand.class,
            TargetsCommand.class,
            FoodsCommand.class,
            ModelCommand.class,
            DriversCommand.class,
            AlternativesCommand.class,
            SpreadCommand.class,
            GenerateCompletion.class,
            HelpCommand.class
        })
final class Packpot implements Runnable {
    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init")
    Packpot() {}

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Which command? For a plan: packpot plan SCENARIO");
    }
}
