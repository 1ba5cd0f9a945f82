#pragma once
// The one place of defaults, frozen per format version. Everything that reads an open input goes through
// `settle`, so that what was assumed can be listed.

#include "core/base/finding.h"
#include "core/model/arrangement.h"

#include <string>
#include <vector>

namespace shaftwright {

/// One input that was left open, what was taken instead and why.
/// Words: "assumption.<reason>.reason" and "assumption.<reason>.effect" in resources/text.
struct Assumption {
    std::string path;   ///< e.g. `surroundings.temperature_C`
    TextValue value;
    std::string unit;   ///< "" for words and dimensionless numbers
    std::string reason; ///< text key
    friend bool operator==(const Assumption&, const Assumption&) = default;
};

/// Material with every value settled. Source: row of resources/materials/materials.csv, or the user's values.
struct SettledMaterial {
    std::string name;
    double modulus_MPa = 206000.0;
    double shear_modulus_MPa = 206000.0 / 2.6;
    double expansion_per_K = 11.5e-6;
    double density_kg_m3 = 7850.0;
    std::string source;
    [[nodiscard]] double poisson() const { return modulus_MPa / (2.0 * shear_modulus_MPa) - 1.0; }
    friend bool operator==(const SettledMaterial&, const SettledMaterial&) = default;
};

/// All open inputs of the document (not of single parts) with a value. Units as in the model.
struct Settled {
    SettledMaterial material;
    double surface_hardness_HRC = 30.0;
    double reliability_percent = 90.0;
    double K_A = 1.0;
    LifeBasis basis = LifeBasis::basic;
    std::vector<LoadCase> load_cases;      ///< at least one; time shares as given
    double temperature_C = 70.0, ambient_C = 20.0, assembly_C = 20.0;
    Lubricant lubricant = Lubricant::grease;
    Dirt dirt = Dirt::normal;
    bool moist = false;
    HousingMaterial housing_material = HousingMaterial::grey_iron;
    double housing_expansion_per_K = 10.4e-6;
    double attitude_deg = 0.0;
    Grade accuracy = Grade::normal, quiet = Grade::normal, guide = Grade::normal;
    StiffnessWish stiffness_wish = StiffnessWish::none;
    Motion motion = Motion::rotation;
    double swing_deg = 0.0;                ///< 0: not stated
    bool separable_wanted = false, allow_plain = false, allow_special = false;
    std::string profile = "general_gearbox";
    ShearModel shear_factor = ShearModel::cowper;
    bool shoulder_flexibility = false;
    bool own_weight = true;
    InducedLoadRule induced_load = InducedLoadRule::e_times_Fr;
    std::vector<Assumption> assumptions;   ///< in a fixed order
    friend bool operator==(const Settled&, const Settled&) = default;
};

/// Standard mounting error of a support whose alignment is not stated (one-piece housing bored in one setting).
inline constexpr double defaultMountingError_mrad = 0.1; // common practice

[[nodiscard]] Settled settle(const Arrangement& arrangement);

/// Names of the material table in its order.
[[nodiscard]] std::vector<std::string> materialNames();

} // namespace shaftwright
