package packpot.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import packpot.household.*;
import packpot.needs.*;
import packpot.ration.*;
import packpot.solver.*;

final class Main {
    private Main() {}
    public static void main(String[] args) throws Exception {
        Knowledge k = Knowledge.load();
        Household h;
        try { h = new ScenarioReader(k, LocalDate.now()).read(Path.of(args[0])); } catch (ScenarioException e) { System.err.println(e.getMessage()); return; }
        Needs n = Needs.of(h, k);
        n.dogs().forEach(d -> System.out.println(d.dog().name()+" "+d.energy()+" "+d.kcalPerDay()+" raised "+d.raisedBy()));
        var out = new RationPlanner(k, new OrToolsSolver()).plan(h, n, SolveLimits.USUAL);
        if (out instanceof RationPlanner.Outcome.Found f) {
            f.ration().potGrams().forEach((i,g)->System.out.printf("%-30s %8.1f%n", i.food().label(), g));
            f.ration().doses().forEach((d,m)->m.forEach((i,c)->System.out.println(d.dog().name()+" "+i.food().label()+" x"+c)));
            System.out.println(f.ration().cost()+" bound "+f.ration().bound()+" proved "+f.ration().proved()+" s "+f.ration().solveSeconds());
        } else System.out.println(out.getClass());
    }
}
