package packpot.food;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a food table measures, one constant a column of models/foods.csv that a ration is reckoned from. The unit
 * stands at the end of the name; figures are kept per gram of food.
 */
public enum Constituent {
    WATER_G("water_g"),
    PROTEIN_G("protein_g"),
    FAT_G("fat_g"),
    CARBOHYDRATE_G("carbohydrate_g"),
    FIBRE_G("fibre_g"),
    ASH_G("ash_g"),
    ARGININE_G("arginine_g"),
    HISTIDINE_G("histidine_g"),
    ISOLEUCINE_G("isoleucine_g"),
    LEUCINE_G("leucine_g"),
    LYSINE_G("lysine_g"),
    METHIONINE_G("methionine_g"),
    CYSTINE_G("cystine_g"),
    PHENYLALANINE_G("phenylalanine_g"),
    TYROSINE_G("tyrosine_g"),
    THREONINE_G("threonine_g"),
    TRYPTOPHAN_G("tryptophan_g"),
    VALINE_G("valine_g"),
    LINOLEIC_G("linoleic_g"),
    ALPHA_LINOLENIC_G("alpha_linolenic_g"),
    ARACHIDONIC_G("arachidonic_g"),
    EPA_G("epa_g"),
    DHA_G("dha_g"),
    CALCIUM_MG("calcium_mg"),
    PHOSPHORUS_MG("phosphorus_mg"),
    POTASSIUM_MG("potassium_mg"),
    SODIUM_MG("sodium_mg"),
    CHLORIDE_MG("chloride_mg"),
    MAGNESIUM_MG("magnesium_mg"),
    IRON_MG("iron_mg"),
    COPPER_MG("copper_mg"),
    MANGANESE_MG("manganese_mg"),
    ZINC_MG("zinc_mg"),
    IODINE_UG("iodine_ug"),
    SELENIUM_UG("selenium_ug"),
    RETINOL_UG("retinol_ug"),
    VITAMIN_A_RAE_UG("vitamin_a_rae_ug"),
    VITAMIN_D_IU("vitamin_d_iu"),
    VITAMIN_E_MG("vitamin_e_mg"),
    VITAMIN_K_UG("vitamin_k_ug"),
    THIAMIN_MG("thiamin_mg"),
    RIBOFLAVIN_MG("riboflavin_mg"),
    NIACIN_MG("niacin_mg"),
    PANTOTHENIC_MG("pantothenic_mg"),
    VITAMIN_B6_MG("b6_mg"),
    FOLATE_UG("folate_ug"),
    VITAMIN_B12_UG("b12_ug"),
    CHOLINE_MG("choline_mg"),
    TAURINE_MG("taurine_mg");

    private static final Map<String, Constituent> BY_COLUMN = byColumn();

    private final String column;

    Constituent(String column) {
        this.column = column;
    }

    /** The column of models/foods.csv, and the name in a scenario's own foods. */
    public String column() {
        return column;
    }

    /** The constituent of a column, or null when the column is none. */
    public static @Nullable Constituent ofColumn(String column) {
        return BY_COLUMN.get(column);
    }

    private static Map<String, Constituent> byColumn() {
        Map<String, Constituent> constituents = new HashMap<>();
        for (Constituent constituent : values()) {
            constituents.put(constituent.column, constituent);
        }
        return constituents;
    }
}
