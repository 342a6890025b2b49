package packpot.cli;

/** The program's exit codes; documented in the help of every command. */
final class ExitCode {
    static final int DONE = 0;
    static final int FAULT_OF_PROGRAM = 1;
    static final int WRONG_USE = 2;
    static final int SCENARIO_FAULTS = 3;
    static final int NO_PLAN = 4;
    static final int AUDIT_FAILED = 5;
    static final int NO_PLAN_IN_TIME = 6;
    static final int NOT_WRITTEN = 7;

    private ExitCode() {}
}
