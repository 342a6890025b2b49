package packpot.ration;

import packpot.household.Wish;
import packpot.solver.LinearModel.Row;
import packpot.solver.Variant;

/**
 * How one limit can be moved: where it stands in the unit that people know it in, and what moving it does to the model.
 *
 * @param row that holds the limit
 * @param figure where it stands, in the unit
 * @param unit such as "g per 1000 kcal" or "% of cooked mass"
 * @param step a handy change that loosens it: above 0 for an upper limit, below 0 for a lower one
 */
public record Lever(Wish wish, Row<Wish> row, double figure, String unit, double step, Move move) {

    /** What a change of the figure does to the model; linear in the change. */
    public interface Move {
        void by(Variant<Wish> variant, double change);
    }

    /** Moves the limit in a variant of its model. */
    public Variant<Wish> moved(Variant<Wish> variant, double to) {
        if (to != figure) {
            move.by(variant, to - figure);
        }
        return variant;
    }

    /** The largest of 1, 2 or 5 times a power of ten that is at most a tenth of a figure. */
    static double handy(double figure) {
        double tenth = Math.abs(figure) / 10;
        double power = Math.pow(10, Math.floor(Math.log10(tenth)));
        double digit = tenth / power;
        return (digit >= 5 ? 5 : digit >= 2 ? 2 : 1) * power;
    }
}
