package packpot.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.household.Wish;

/**
 * What the cost of a plan hangs on: its limits and the prices of foods. Money is for the whole batch.
 *
 * @param limits those that hold the cost up, the dearest first
 * @param smallLimits how many more hold it up by less than is worth telling
 * @param prices of the foods in the pot, and how far each can move
 * @param leftOut the pantry's other foods, and the price at which each would come in
 */
public record CostDrivers(
        Planner.Result.Planned base,
        List<LimitCost> limits,
        int smallLimits,
        List<PriceRange> prices,
        List<EntryPrice> leftOut) {
    public CostDrivers {
        limits = List.copyOf(limits);
        prices = List.copyOf(prices);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * What one limit costs.
     *
     * @param figure where the limit stands
     * @param unit of the figure; empty when things are counted
     * @param step a handy change that loosens it, in the unit; below 0 for a lower limit
     * @param atTheMargin what the linear model says while every choice stays; null where the limit counts choices alone
     * @param replanned what a new plan saves with the limit loosened by one step; null when the time ran out
     */
    public record LimitCost(
            Wish wish,
            double figure,
            String unit,
            double step,
            @Nullable Margin atTheMargin,
            @Nullable Replanned replanned) {

        /** What loosening it by a step saves, as far as is known. */
        public double saves() {
            Replanned plan = replanned;
            if (plan != null) {
                return plan.saves();
            }
            Margin margin = atTheMargin;
            return margin == null ? 0 : margin.stepGives();
        }
    }

    /**
     * The price of a limit while foods, packs and doses stay as they are and only weights move.
     *
     * @param perUnit by how much the batch gets dearer when the figure rises by one
     * @param from the lowest figure at which that holds
     * @param to the highest
     * @param triedAt the limit was moved here, within the range, and the model solved again
     * @param says what that saves by the price
     * @param gives what it saves by the solve
     * @param exact whether the two agree within 1 %
     * @param stepGives what a whole step saves by a solve, in the range or not
     */
    public record Margin(
            double perUnit,
            double from,
            double to,
            double triedAt,
            double says,
            double gives,
            boolean exact,
            double stepGives) {}

    /**
     * A new plan with one limit loosened: foods, packs and doses are open again.
     *
     * @param figure the limit that it was planned with
     * @param saves on the batch
     * @param savesAtMost no plan with the same kinds of additions in the bowls saves more
     * @param sameBowls whether the additions that go into bowls stayed of the same kinds
     */
    public record Replanned(double figure, double saves, double savesAtMost, boolean sameBowls) {}

    /** How a search for the price at which the plan changes ended. */
    public enum Ending {
        /** There the plan changes. */
        FOUND,
        /** It does not change, however far the price goes. */
        NEVER,
        /** The time ran out; up to there it does not change. */
        OUT_OF_TIME
    }

    /**
     * The price of one food at which the foods of the plan change.
     *
     * @param price for a pack, or for a gram as it is sold when it is loose
     * @param precision the change may lie as far beyond {@code price}
     * @param comesIn foods that the plan then has and has not now
     * @param goesOut the other way round
     */
    public record Turn(Ending ending, double price, double precision, List<String> comesIn, List<String> goesOut) {
        public Turn {
            comesIn = List.copyOf(comesIn);
            goesOut = List.copyOf(goesOut);
        }
    }

    /**
     * How a food is priced.
     *
     * @param pack what a pack is called; null when it is sold loose
     * @param price for a pack, or for a gram as it is sold when it is loose
     */
    public record Priced(
            String food, String label, @Nullable String pack, double price) {}

    /** The prices of one food between which the pot keeps its foods, all other prices as they are. */
    public record PriceRange(Priced food, Turn down, Turn up) {}

    /** The price at which a food that is left out would come into the plan, all other prices as they are. */
    public record EntryPrice(Priced food, Turn down) {}

    /** What the search gave. */
    public sealed interface Result {
        /** What drives the cost. */
        record Driven(CostDrivers drivers) implements Result {}

        /** There is no plan whose cost could be driven. */
        record NoBase(Planner.Result.NoPlan none) implements Result {}
    }
}
