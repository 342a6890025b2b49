package packpot.solver;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import packpot.solver.LinearModel.Row;
import packpot.solver.LinearModel.Variable;

/**
 * A model with a few things changed. The original stays as it is; rows and variables keep their places, so the
 * original's variables read solutions of the variant, and may be used in rows that are added to it.
 *
 * @param <T> the tag of rows
 */
public final class Variant<T> {
    private record Bounds(double lower, double upper, boolean integer) {}

    private final LinearModel<T> original;
    private final Map<Integer, Bounds> bounds = new HashMap<>();
    private final IdentityHashMap<Row<T>, Row<T>> rows = new IdentityHashMap<>();
    private final Expression objective = new Expression();

    public Variant(LinearModel<T> original) {
        this.original = original;
        objective.add(1, original.objective());
    }

    /** Every whole number stands where a solution has it: what is left is linear. */
    public Variant<T> withIntegersFixed(ToDoubleFunction<Variable> values) {
        original.variables().stream().filter(Variable::integer).forEach(v -> {
            double value = Math.rint(values.applyAsDouble(v));
            bounds.put(v.index(), new Bounds(value, value, false));
        });
        return this;
    }

    /** Other bounds of a variable. */
    public Variant<T> bound(Variable variable, double lower, double upper) {
        bounds.put(variable.index(), new Bounds(lower, upper, variable.integer()));
        return this;
    }

    /** Moves both limits of a row; infinite ones stay. */
    public Variant<T> shift(Row<T> row, double lower, double upper) {
        Row<T> now = rows.getOrDefault(row, row);
        rows.put(row, new Row<>(now.name(), now.expression(), now.lower() + lower, now.upper() + upper, now.tag()));
        return this;
    }

    /** Adds terms to a row. */
    public Variant<T> add(Row<T> row, double factor, Expression more) {
        Row<T> now = rows.getOrDefault(row, row);
        Expression sum = new Expression().add(1, now.expression()).add(factor, more);
        rows.put(row, new Row<>(now.name(), sum, now.lower(), now.upper(), now.tag()));
        return this;
    }

    /** Adds terms to the objective. */
    public Variant<T> charge(double factor, Expression more) {
        objective.add(factor, more);
        return this;
    }

    /** Minimises something else. */
    public Variant<T> minimise(Expression other) {
        objective.add(-1, new Expression().add(1, objective)).add(1, other);
        return this;
    }

    /** The changed model; a copy of its own at each call. */
    public LinearModel<T> model() {
        LinearModel<T> model = new LinearModel<>();
        for (Variable v : original.variables()) {
            @Nullable Bounds other = bounds.get(v.index());
            Bounds at = other == null ? new Bounds(v.lower(), v.upper(), v.integer()) : other;
            if (at.integer()) {
                model.whole(v.name(), at.lower(), at.upper());
            } else {
                model.variable(v.name(), at.lower(), at.upper());
            }
        }
        List<Variable> copies = model.variables();
        for (Row<T> row : original.rows()) {
            Row<T> now = rows.getOrDefault(row, row);
            model.row(now.name(), copy(now.expression(), copies), now.lower(), now.upper(), now.tag());
        }
        model.objective().add(1, copy(objective, copies));
        return model;
    }

    private static Expression copy(Expression expression, List<Variable> copies) {
        Expression copy = new Expression();
        expression.forEach((v, coefficient) -> copy.add(coefficient, copies.get(v.index())));
        return copy;
    }
}
