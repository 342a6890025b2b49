package packpot.explain;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import packpot.SharedSolver;
import packpot.household.Change;
import packpot.household.Household;
import packpot.household.Knowledge;
import packpot.household.ScenarioChanges;
import packpot.household.ScenarioException;
import packpot.household.ScenarioReader;
import packpot.solver.SolveLimits;
import packpot.solver.Solver;

/** A small household with two dogs that is planned in a moment, and questions to it. */
final class AskedScenario {
    static final Knowledge KNOWLEDGE = Knowledge.load();
    static final Solver SOLVER = new SharedSolver();
    static final SolveLimits LIMITS = new SolveLimits(60, 0.001);

    private static final String TEXT = """
            {'name': 'Two dogs', 'start': '2026-03-07',
             'dogs': [{'name': 'Moss', 'weight': '21 lb', 'age': '6 years', 'neutered': true, 'activity': 'moderate'},
                      {'name': 'Pip', 'weight': '15 lb', 'age': '5 years', 'neutered': true, 'activity': 'moderate'}],
             'kitchen': {'days': 10, 'mealsPerDay': 2, 'bag': 'quart', 'fridgeDays': 3},
             'pantry': [
               {'food': 'ground turkey, 93 % lean', 'price': '$5.00/lb'},
               {'food': 'chicken thigh, skinless', 'pack': '3 lb', 'price': '$8.40'},
               {'food': 'chicken liver', 'pack': '20 oz', 'price': '$2.90'},
               {'food': 'egg, whole', 'price': '$3.60'},
               {'food': 'white rice, enriched, dry', 'price': '$4.00'},
               {'food': 'rolled oats, dry', 'pack': '42 oz', 'price': '$4.50'},
               {'food': 'carrots', 'pack': '2 lb', 'price': '$1.90'},
               {'food': 'canola oil', 'price': '$4.50'},
               {'food': 'eggshell powder', 'onHand': '300 g'},
               {'food': 'potassium chloride', 'price': '$10.00'},
               {'food': 'salt, iodised, 45 ug per g', 'price': '$1.20'},
               {'food': 'kelp tablet, 150 ug iodine', 'pack': '200 tablets', 'price': '$9.00'},
               {'food': 'zinc gluconate', 'price': '$7.00'},
               {'food': 'copper gluconate', 'price': '$6.00'},
               {'food': 'manganese gluconate', 'price': '$8.00'},
               {'food': 'vitamin e oil', 'price': '$10.00'},
               {'food': 'vitamin d3 drops', 'pack': '300 drops', 'price': '$9.00'}]}
            """;

    private AskedScenario() {}

    static ScenarioChanges changes() {
        return changes(TEXT);
    }

    static ScenarioChanges changes(String text) {
        return new ScenarioChanges(
                KNOWLEDGE,
                new ScenarioReader(KNOWLEDGE, LocalDate.of(2026, 3, 7)),
                "two-dogs.json",
                text.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    static Household household() throws ScenarioException {
        return changes().unchanged();
    }

    /** The same without a source of calcium, which no plan can do without. */
    static ScenarioChanges withoutPlan() {
        return changes(TEXT.replace("{'food': 'eggshell powder', 'onHand': '300 g'},", ""));
    }

    static Change.Question question(String... words) throws ScenarioException {
        List<Change> changes = new ArrayList<>();
        for (String each : words) {
            changes.add(Change.of(each));
        }
        return new Change.Question(Change.words(changes), changes);
    }

    static WhatIf.Terms terms(Mode mode) {
        return new WhatIf.Terms(mode, 0, null, 0.2);
    }

    static WhatIf.Answer ask(WhatIf.Terms terms, Change.Question... questions) throws ScenarioException {
        return new WhatIf(KNOWLEDGE, SOLVER, LIMITS).ask(changes(), List.of(questions), terms, done -> {});
    }

    static WhatIf.Answer.Compared compared(WhatIf.Terms terms, Change.Question... questions) throws ScenarioException {
        return (WhatIf.Answer.Compared) ask(terms, questions);
    }
}
