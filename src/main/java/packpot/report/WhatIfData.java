package packpot.report;

import java.util.LinkedHashMap;
import java.util.Map;
import packpot.explain.Planner;
import packpot.explain.WhatIf.Alternative;
import packpot.explain.WhatIf.Answer;
import packpot.explain.WhatIf.Outcome;

/** An old plan and what becomes of it as data for programs; the fields are described in models/what-if.schema.json. */
final class WhatIfData {

    private WhatIfData() {}

    static Map<String, Object> of(Answer.Compared answer) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("packpotWhatIf", JsonReport.FORMAT);
        root.put("mode", answer.mode().key());
        root.put("base", planned(answer.base()));
        root.put(
                "alternatives",
                answer.alternatives().stream().map(WhatIfData::alternative).toList());
        root.put("disclaimer", Disclaimer.TEXT);
        return root;
    }

    private static Map<String, Object> planned(Planner.Result.Planned planned) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("auditPassed", planned.verdict().passed());
        map.put("plan", planned.plan());
        map.put("audit", planned.verdict());
        return map;
    }

    private static Map<String, Object> alternative(Alternative alternative) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", alternative.name());
        map.put("changes", alternative.changes());
        if (alternative.carried() != null) {
            map.put("carried", alternative.carried());
        }
        Outcome outcome = alternative.outcome();
        if (outcome instanceof Outcome.NewPlan failed
                && !failed.planned().verdict().passed()) {
            map.put("outcome", "failed-audit");
            map.put("findings", failed.planned().verdict().findings());
        } else if (outcome instanceof Outcome.NewPlan plan) {
            map.put("outcome", "plan");
            map.put("comparison", plan.comparison());
            if (plan.nearness() != null) {
                map.put("nearness", plan.nearness());
            }
            map.put("new", planned(plan.planned()));
        } else if (outcome instanceof Outcome.NoPlan none) {
            map.put("outcome", none.provedImpossible() ? "no-plan" : "not-found-in-time");
            map.put("clashes", ClashText.data(none.clash()));
        } else {
            map.put("outcome", "nothing-to-cook");
        }
        return map;
    }
}
