#include "core/model/defaults.h"

#include "core/base/embedded.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <map>
#include <string_view>

namespace shaftwright {
namespace {

std::vector<std::string> splitCsvLine(std::string_view line)
{
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            cells.emplace_back();
        else if (c != '\r')
            cells.back() += c;
    }
    return cells;
}

/// resources/materials/materials.csv: name,E_MPa,G_MPa,expansion_per_K,density_kg_m3,...,source
const std::vector<SettledMaterial>& materialTable()
{
    static const std::vector<SettledMaterial> table = [] {
        std::vector<SettledMaterial> rows;
        std::string_view text = embeddedResource("materials/materials.csv");
        std::map<std::string, std::size_t> column;
        while (!text.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            const std::vector<std::string> cells = splitCsvLine(text.substr(0, end));
            text.remove_prefix(std::min(end + 1, text.size()));
            if (cells.size() < 2)
                continue;
            if (column.empty()) {
                for (std::size_t i = 0; i < cells.size(); ++i)
                    column[cells[i]] = i;
                continue;
            }
            const auto number = [&](const char* name) { return parseDecimal(cells.at(column.at(name))).value_or(0.0); };
            rows.push_back({cells.at(column.at("name")), number("E_MPa"), number("G_MPa"), number("expansion_per_K"),
                            number("density_kg_m3"), cells.at(column.at("source"))});
        }
        return rows;
    }();
    return table;
}

SettledMaterial settleMaterial(const Material& material, std::vector<Assumption>& assumptions)
{
    SettledMaterial settled;
    const auto& table = materialTable();
    const auto row =
        std::find_if(table.begin(), table.end(), [&](const SettledMaterial& candidate) { return candidate.name == material.name; });
    const bool known = row != table.end();
    if (known)
        settled = *row;
    settled.name = material.name;
    if (material.modulus_MPa) {
        settled.modulus_MPa = *material.modulus_MPa;
        settled.shear_modulus_MPa = settled.modulus_MPa / 2.6;
    }
    if (material.shear_modulus_MPa)
        settled.shear_modulus_MPa = *material.shear_modulus_MPa;
    if (material.expansion_per_K)
        settled.expansion_per_K = *material.expansion_per_K;
    if (material.density_kg_m3)
        settled.density_kg_m3 = *material.density_kg_m3;
    if (!known) {
        settled.source = "stated in the arrangement";
        const auto assume = [&](bool open, const char* name, double value, const char* unit) {
            if (open)
                assumptions.push_back({std::string("shaft.material.") + name, value, unit, "material_steel"});
        };
        assume(!material.modulus_MPa, "modulus_MPa", settled.modulus_MPa, "MPa");
        assume(!material.shear_modulus_MPa, "shear_modulus_MPa", settled.shear_modulus_MPa, "MPa");
        assume(!material.expansion_per_K, "expansion_per_K", settled.expansion_per_K, "1/K");
        assume(!material.density_kg_m3, "density_kg_m3", settled.density_kg_m3, "kg/m3");
    }
    return settled;
}

/// Linear expansion of housing materials in 1/K. Handbook values, from memory (high confidence).
double housingExpansion_per_K(HousingMaterial material)
{
    switch (material) {
    case HousingMaterial::grey_iron:
        return 10.4e-6;
    case HousingMaterial::nodular_iron:
        return 11.5e-6;
    case HousingMaterial::steel:
        return 11.5e-6;
    case HousingMaterial::aluminium:
        return 23.0e-6;
    }
    return 11.5e-6;
}

} // namespace

std::vector<std::string> materialNames()
{
    std::vector<std::string> names;
    for (const SettledMaterial& row : materialTable())
        names.push_back(row.name);
    return names;
}

Settled settle(const Arrangement& arrangement)
{
    Settled settled;
    std::vector<Assumption>& assumptions = settled.assumptions;
    settled.material = settleMaterial(arrangement.shaft.material, assumptions);

    const auto take = [&](const auto& input, auto& target, const char* path, TextValue shown, const char* unit, const char* reason) {
        if (input)
            target = *input;
        else
            assumptions.push_back({path, std::move(shown), unit, reason});
    };

    take(arrangement.shaft.surface_hardness_HRC, settled.surface_hardness_HRC, "shaft.surface_hardness_HRC",
         settled.surface_hardness_HRC, "HRC", "surface_hardness");

    const Duty& duty = arrangement.duty;
    take(duty.reliability_percent, settled.reliability_percent, "duty.reliability_percent", 90.0, "%", "reliability");
    take(duty.K_A, settled.K_A, "duty.K_A", 1.0, "", "application_factor");
    take(duty.basis, settled.basis, "duty.basis", std::string("basic"), "", "life_basis");
    if (!duty.required_L_h)
        assumptions.push_back({"duty.required_L_h", std::string("none"), "", "required_life_missing"});
    settled.load_cases = duty.load_cases;
    if (settled.load_cases.empty()) {
        LoadCase only;
        only.id = CaseId("case");
        settled.load_cases.push_back(only);
        assumptions.push_back({"duty.load_cases", std::string("case"), "", "load_case_missing"});
    }

    const Surroundings& s = arrangement.surroundings;
    const bool any_gear = std::any_of(arrangement.parts.begin(), arrangement.parts.end(),
                                      [](const Part& part) { return part.body.index() <= 3; });
    settled.lubricant = any_gear ? Lubricant::oil : Lubricant::grease;
    const std::string lubricant_word = any_gear ? "oil" : "grease";
    take(s.temperature_C, settled.temperature_C, "surroundings.temperature_C", 70.0, "°C", "temperature");
    take(s.ambient_C, settled.ambient_C, "surroundings.ambient_C", 20.0, "°C", "ambient");
    take(s.assembly_C, settled.assembly_C, "surroundings.assembly_C", 20.0, "°C", "assembly");
    take(s.lubricant, settled.lubricant, "surroundings.lubricant", lubricant_word, "", any_gear ? "lubricant_oil" : "lubricant_grease");
    take(s.dirt, settled.dirt, "surroundings.dirt", std::string("normal"), "", "dirt");
    take(s.moist, settled.moist, "surroundings.moist", std::string("no"), "", "moist");
    take(s.housing_material, settled.housing_material, "surroundings.housing_material", std::string("grey_iron"), "",
         "housing_material");
    settled.housing_expansion_per_K = housingExpansion_per_K(settled.housing_material);
    take(s.attitude_deg, settled.attitude_deg, "surroundings.attitude_deg", 0.0, "°", "attitude");
    take(s.accuracy, settled.accuracy, "surroundings.accuracy", std::string("normal"), "", "accuracy");
    take(s.quiet, settled.quiet, "surroundings.quiet", std::string("normal"), "", "quiet");
    take(s.guide, settled.guide, "surroundings.guide", std::string("normal"), "", "guide");
    take(s.stiffness_wish, settled.stiffness_wish, "surroundings.stiffness_wish", std::string("none"), "", "stiffness_wish");
    take(s.motion, settled.motion, "surroundings.motion", std::string("rotation"), "", "motion");
    if (settled.motion == Motion::oscillation)
        take(s.swing_deg, settled.swing_deg, "surroundings.swing_deg", std::string("not stated"), "", "swing");
    take(s.separable_wanted, settled.separable_wanted, "surroundings.separable_wanted", std::string("no"), "", "separable");
    take(s.allow_plain, settled.allow_plain, "surroundings.allow_plain", std::string("no"), "", "allow_plain");
    take(s.allow_special, settled.allow_special, "surroundings.allow_special", std::string("no"), "", "allow_special");
    take(s.profile, settled.profile, "surroundings.profile", std::string("general_gearbox"), "", "profile");

    const MethodOptions& options = arrangement.options;
    take(options.shear_factor, settled.shear_factor, "options.shear_factor", std::string("cowper"), "", "shear_factor");
    take(options.shoulder_flexibility, settled.shoulder_flexibility, "options.shoulder_flexibility", std::string("off"), "",
         "shoulder_flexibility");
    take(options.own_weight, settled.own_weight, "options.own_weight", std::string("on"), "", "own_weight");
    take(options.induced_load, settled.induced_load, "options.induced_load", std::string("e_times_Fr"), "", "induced_load");

    for (const Support& support : arrangement.supports) {
        const std::string base = "supports." + support.id.value + ".";
        if (!support.mounting_error_mrad)
            assumptions.push_back({base + "mounting_error_mrad", defaultMountingError_mrad, "mrad", "mounting_error"});
        if (!support.greatest_outer_mm)
            assumptions.push_back({base + "greatest_outer_mm", std::string("not limited"), "", "space_outer"});
        if (!support.greatest_width_mm)
            assumptions.push_back({base + "greatest_width_mm", std::string("not limited"), "", "space_width"});
    }
    return settled;
}

} // namespace shaftwright
