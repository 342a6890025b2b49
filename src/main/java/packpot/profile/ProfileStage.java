package packpot.profile;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One column of a published profile, as it applies to one dog.
 *
 * @param title for people, such as "AAFCO 2016, adult maintenance"
 * @param referenceKcalPerKg075 intake that the figures assume; a dog that eats less gets its minimums raised in
 *     proportion; null where none applies
 * @param limits minimums and maximums, at most one of each kind per nutrient
 */
public record ProfileStage(
        String profile,
        String stage,
        String title,
        @Nullable Double referenceKcalPerKg075,
        List<Limit> limits) {
    public ProfileStage {
        limits = List.copyOf(limits);
    }
}
