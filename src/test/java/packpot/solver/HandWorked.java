package packpot.solver;

import packpot.solver.LinearModel.Variable;

/** Linear problems that were worked by hand; the work stands beside them. */
final class HandWorked {

    /** The workshop with its two products. */
    record Workshop(LinearModel<String> model, Variable x, Variable y) {}

    /** The two feeds. */
    record Feed(LinearModel<String> model, Variable cheap, Variable dear) {}

    private HandWorked() {}

    /**
     * Two products with profits of 3 and 5 share three shops: x &le; 4, 2 y &le; 12, 3 x + 2 y &le; 18.
     *
     * <p>By hand: the second and third shop are full, so y = b2 / 2 and x = (b3 - b2) / 3, which is (2, 6) with a profit
     * of 36. Profit = 3 (b3 - b2) / 3 + 5 b2 / 2 = b3 + 1.5 b2, so an hour is worth 0, 1.5 and 1. It stays so while 0 &le;
     * x &le; 4: with b3 = 18, b2 from 6 to 18; with b2 = 12, b3 from 12 to 24; and b1 from x = 2 up. The corner stays the
     * best while the profit's slope p1 / p2 lies between those of the two shops, 0 and 3/2: with p2 = 5, p1 from 0 to 7.5;
     * with p1 = 3, p2 from 2 up.
     */
    static Workshop workshop(double first, double second, double third, double profitX, double profitY) {
        LinearModel<String> model = new LinearModel<>();
        Variable x = model.variable("x", 0, Double.POSITIVE_INFINITY);
        Variable y = model.variable("y", 0, Double.POSITIVE_INFINITY);
        model.objective().add(-profitX, x).add(-profitY, y);
        model.atMost("first", new Expression().add(1, x), first, null);
        model.atMost("second", new Expression().add(2, y), second, null);
        model.atMost("third", new Expression().add(3, x).add(2, y), third, null);
        return new Workshop(model, x, y);
    }

    /**
     * At least 10 of two feeds at 2 and 3, of the cheap one at most 6.
     *
     * <p>By hand: 6 of the cheap one and 4 of the dear one cost 24. One more of the need is bought dear: 3, while the need
     * is 6 or more; below, 2. One more of the cheap feed saves 3 - 2 = 1. The plan stays while the cheap feed costs at most
     * 3, and the dear one at least 2.
     */
    static Feed feed(double need, double mostCheap, double priceCheap, double priceDear) {
        LinearModel<String> model = new LinearModel<>();
        Variable cheap = model.variable("cheap", 0, mostCheap);
        Variable dear = model.variable("dear", 0, Double.POSITIVE_INFINITY);
        model.objective().add(priceCheap, cheap).add(priceDear, dear);
        model.atLeast("need", new Expression().add(1, cheap).add(1, dear), need, null);
        return new Feed(model, cheap, dear);
    }
}
