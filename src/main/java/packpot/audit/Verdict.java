package packpot.audit;

import java.util.List;

/** What the audit says of a plan: it passes, or every reason why not. */
public record Verdict(List<Finding> findings, List<DogAudit> dogs) {
    public Verdict {
        findings = List.copyOf(findings);
        dogs = List.copyOf(dogs);
    }

    public boolean passed() {
        return findings.isEmpty();
    }
}
