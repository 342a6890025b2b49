package packpot.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;
import packpot.household.Wish;

/**
 * Wishes that cannot hold together; without any one of them the others can.
 *
 * @param irreducible false when the time ran out before the last part of that was proved
 */
public record Clash(List<Part> parts, boolean irreducible) {
    public Clash {
        parts = List.copyOf(parts);
    }

    /**
     * One of the wishes.
     *
     * @param asked the figure that is wished, margin included; null where it has none
     * @param reached the nearest to it that can be reached while the other wishes of the clash hold; null where it has no
     *     figure or the time ran out
     * @param unit of both
     * @param atLeast whether the wish is for at least so much; else at most
     * @param figures asked and reached in words; empty when neither is known
     */
    public record Part(
            Wish wish,
            @Nullable Double asked,
            @Nullable Double reached,
            String unit,
            boolean atLeast,
            String figures) {}
}
