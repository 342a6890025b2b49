package packpot.ration;

import packpot.dog.Dog;
import packpot.household.Avoidance;
import packpot.household.Wish;
import packpot.solver.Expression;
import packpot.solver.LinearModel.Variable;

/**
 * A food that a dog must not get, as a row: x[i] &le; 0 or k[j,d] &le; 0. The usual model leaves such a food out
 * altogether; this is for asking what that wish costs.
 */
final class Avoiding {

    private Avoiding() {}

    /** One row for each word by which the dog avoids the food. */
    static void add(Build build, Dog dog, Prepared food, Variable amount) {
        for (String word : dog.avoids()) {
            if (Avoidance.names(word, food.item().food())) {
                String words = dog.name() + " must not get " + word;
                build.model.atMost(
                        words + ", " + amount.name(),
                        new Expression().add(1, amount),
                        0,
                        new Wish(Wish.Kind.AVOID, dog.name(), word, words, 1));
            }
        }
    }
}
