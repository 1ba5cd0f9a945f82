#include "core/check/check.h"

#include "core/check/part_values.h"
#include "core/model/defaults.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>
#include <string>

namespace shaftwright
{
namespace
{

using check::largest_diameter_mm;
using check::largest_length_mm;
using check::largest_magnitude;

/// Below this a segment is no piece of a shaft; the beam would merge its ends.
constexpr double smallest_size_mm = 1e-3;
/// Places are typed or summed from segments; this much past the end is rounding.
constexpr double place_tolerance_mm = 1e-6;

bool sizeGood(double value, double high)
{
    return std::isfinite(value) && value >= smallest_size_mm && value <= high;
}

/// Length of the shaft, none when a segment has no usable length.
std::optional<double> lengthOf(const Shaft& shaft)
{
    const bool good = !shaft.segments.empty() &&
                      std::all_of(shaft.segments.begin(), shaft.segments.end(),
                                  [](const Segment& segment) { return sizeGood(segment.length_mm, largest_length_mm); });
    return good ? std::optional<double>(shaft.length_mm()) : std::nullopt;
}

std::string nameOf(const Support& support)
{
    return support.name.empty() ? support.id.value : support.name;
}

/// No negative eigenvalue beyond rounding: elimination with the largest diagonal entry first.
bool positiveSemidefinite(Matrix5 K, double largest)
{
    std::array<bool, 5> done{};
    for (std::size_t round = 0; round < 5; ++round) {
        std::size_t pivot = 5;
        for (std::size_t i = 0; i < 5; ++i) {
            if (!done[i] && (pivot == 5 || K[i][i] > K[pivot][pivot]))
                pivot = i;
        }
        done[pivot] = true;
        if (K[pivot][pivot] < -1e-9 * largest)
            return false;
        if (K[pivot][pivot] <= 1e-9 * largest) {
            // All that is left must vanish.
            for (std::size_t i = 0; i < 5; ++i) {
                for (std::size_t k = 0; k < 5; ++k) {
                    const bool left = (!done[i] || i == pivot) && (!done[k] || k == pivot);
                    if (left && (i == k ? K[i][k] < -1e-9 * largest : std::abs(K[i][k]) > 2e-9 * largest))
                        return false;
                }
            }
            return true;
        }
        for (std::size_t i = 0; i < 5; ++i) {
            for (std::size_t k = 0; k < 5; ++k) {
                if (!done[i] && !done[k])
                    K[i][k] -= K[i][pivot] * K[pivot][k] / K[pivot][pivot];
            }
        }
    }
    return true;
}

class Checker
{
public:
    explicit Checker(const Arrangement& arrangement) : m_arrangement(arrangement), m_length_mm(lengthOf(arrangement.shaft)) {}

    Findings run()
    {
        checkIds();
        checkShaft();
        checkMaterial();
        checkParts();
        checkSupports();
        checkDuty();
        checkSurroundings();
        checkRequirements();
        return std::move(m_findings);
    }

private:
    const Arrangement& m_arrangement;
    std::optional<double> m_length_mm;
    Findings m_findings;

    void add(Severity severity, const char* code, std::string subject, std::string path, NamedValues values = {},
             const char* variant = "", const char* source = "")
    {
        Finding finding;
        finding.severity = severity;
        finding.code = code;
        finding.variant = variant;
        finding.subject = std::move(subject);
        finding.path = std::move(path);
        // No number that is not finite leaves core, not even in a sentence.
        std::erase_if(values.entries, [](const auto& entry) {
            const double* number = std::get_if<double>(&entry.second);
            return number != nullptr && !std::isfinite(*number);
        });
        finding.values = std::move(values);
        finding.source = source;
        m_findings.push_back(std::move(finding));
    }

    /// False (and a finding) unless low <= value <= high.
    bool within(double value, double low, double high, const std::string& subject, const std::string& path)
    {
        if (std::isfinite(value) && value >= low && value <= high)
            return true;
        NamedValues values{{"path", path}, {"low", low}, {"high", high}};
        if (std::isfinite(value)) {
            values.set("value", value);
            add(Severity::stop, "value-invalid", subject, path, std::move(values));
        } else {
            add(Severity::stop, "value-invalid", subject, path, std::move(values), "not_finite");
        }
        return false;
    }

    template <class Items> void uniqueIds(const Items& items, std::set<std::string>& seen, const char* list)
    {
        for (const auto& item : items) {
            const std::string& id = item.id.value;
            if (!id.empty() && seen.insert(id).second)
                continue;
            const std::string path = std::string(list) + "." + id + ".id";
            add(Severity::stop, "value-invalid", id, path, {{"path", path}, {"id", id}}, id.empty() ? "id_empty" : "id_twice");
        }
    }

    /// Findings and paths speak by ids, so each names one thing.
    void checkIds()
    {
        std::set<std::string> segments, standing, cases, requirements;
        uniqueIds(m_arrangement.shaft.segments, segments, "shaft.segments");
        uniqueIds(m_arrangement.parts, standing, "parts");
        uniqueIds(m_arrangement.supports, standing, "supports");
        uniqueIds(m_arrangement.duty.load_cases, cases, "duty.load_cases");
        uniqueIds(m_arrangement.requirements, requirements, "requirements");
    }

    void checkShaft()
    {
        const Shaft& shaft = m_arrangement.shaft;
        if (shaft.segments.empty())
            add(Severity::stop, "segment-size", "", "shaft.segments", {}, "none");
        for (const Segment& segment : shaft.segments) {
            const std::string path = "shaft.segments." + segment.id.value;
            const auto positive = [&](double value, double limit, const char* input) {
                if (sizeGood(value, limit))
                    return true;
                add(Severity::stop, "segment-size", segment.id.value, path + "." + input,
                    {{"segment", segment.id.value}, {"low", smallest_size_mm}, {"high", limit}, {"value", value}}, input);
                return false;
            };
            bool good = positive(segment.length_mm, largest_length_mm, "length_mm");
            good = positive(segment.outer_mm, largest_diameter_mm, "outer_mm") && good;
            if (segment.outer_end_mm)
                good = positive(*segment.outer_end_mm, largest_diameter_mm, "outer_end_mm") && good;
            if (!good)
                continue;
            const auto bore = [&](double bore_mm, double outer_mm, const char* input) {
                const bool bad = !std::isfinite(bore_mm) || bore_mm < 0.0 || bore_mm >= outer_mm;
                const bool said = !m_findings.empty() && m_findings.back().path == path + "." + input;
                if (bad && !said)
                    add(Severity::stop, "segment-bore", segment.id.value, path + "." + input,
                        {{"segment", segment.id.value}, {"bore_mm", bore_mm}, {"outer_mm", outer_mm}});
            };
            bore(segment.boreLeft_mm(), segment.outer_mm, "bore_mm");
            if (segment.bore_end_mm || segment.outer_end_mm)
                bore(segment.boreRight_mm(), segment.outerRight_mm(), segment.bore_end_mm ? "bore_end_mm" : "bore_mm");
            const double ratio =
                std::max(segment.outer_mm, segment.outerRight_mm()) / std::min(segment.outer_mm, segment.outerRight_mm());
            const double half_angle_deg =
                std::atan2(0.5 * std::abs(segment.outer_mm - segment.outerRight_mm()), segment.length_mm) * 57.29577951308232;
            if (ratio > 10.0 || half_angle_deg > 45.0)
                add(Severity::caution, "segment-cone", segment.id.value, path + ".outer_end_mm",
                    {{"segment", segment.id.value}, {"ratio", ratio}, {"half_angle_deg", half_angle_deg}}, "",
                    "beam theory holds for slender cones");
            for (const Feature& feature : segment.features) {
                const std::string feature_path = path + ".features." + feature.id.value;
                within(feature.position_mm, 0.0, segment.length_mm, segment.id.value, feature_path + ".position_mm");
                within(feature.length_mm, 0.0, largest_length_mm, segment.id.value, feature_path + ".length_mm");
                within(feature.depth_mm, 0.0, 0.5 * std::max(segment.outer_mm, segment.outerRight_mm()), segment.id.value,
                       feature_path + ".depth_mm");
            }
        }
    }

    void checkMaterial()
    {
        const Material& material = m_arrangement.shaft.material;
        bool good = true;
        const auto elastic = [&](const std::optional<double>& value, double high, const char* input) {
            if (value && !(std::isfinite(*value) && *value > 0.0 && *value <= high)) {
                add(Severity::stop, "material-elastic", "", std::string("shaft.material.") + input,
                    {{"value", *value}, {"high", high}}, input);
                good = false;
            }
        };
        elastic(material.modulus_MPa, 1e7, "modulus_MPa");
        elastic(material.shear_modulus_MPa, 1e7, "shear_modulus_MPa");
        elastic(material.density_kg_m3, 1e5, "density_kg_m3");
        if (material.expansion_per_K)
            within(*material.expansion_per_K, -1e-3, 1e-3, "", "shaft.material.expansion_per_K");
        if (m_arrangement.shaft.surface_hardness_HRC)
            within(*m_arrangement.shaft.surface_hardness_HRC, 0.0, 100.0, "", "shaft.surface_hardness_HRC");
        if (!good || (!material.modulus_MPa && !material.shear_modulus_MPa))
            return;
        // One of the two may come from the table.
        const double poisson = settle(m_arrangement).material.poisson();
        if (!(poisson >= -1e-9 && poisson <= 0.5 + 1e-9))
            add(Severity::stop, "material-elastic", "",
                std::string("shaft.material.") + (material.shear_modulus_MPa ? "shear_modulus_MPa" : "modulus_MPa"),
                {{"poisson", poisson}}, "poisson");
    }

    void checkParts()
    {
        for (const Part& part : m_arrangement.parts) {
            const std::string path = "parts." + part.id.value;
            const std::string name = part.name.empty() ? part.id.value : part.name;
            if (!std::isfinite(part.x_mm))
                within(part.x_mm, 0.0, m_length_mm.value_or(largest_length_mm), part.id.value, path + ".x_mm");
            else if (m_length_mm && (part.x_mm < -place_tolerance_mm || part.x_mm > *m_length_mm + place_tolerance_mm))
                add(Severity::stop, "part-x-outside", part.id.value, path + ".x_mm",
                    {{"part", name}, {"length_mm", *m_length_mm}, {"x_mm", part.x_mm}});
            // Zero and negative masses are judged with the weights.
            if (part.mass_kg && !(*part.mass_kg <= 0.0))
                within(*part.mass_kg, 0.0, largest_magnitude, part.id.value, path + ".mass_kg");
            check::visitNumbers(part, [&](double value, double low, double high, const std::string& input) {
                within(value, low, high, part.id.value, path + "." + input);
            });
            if (const auto* line = std::get_if<DistributedLoad>(&part.body)) {
                if (m_length_mm && line->end_mm > *m_length_mm + place_tolerance_mm)
                    add(Severity::stop, "load-range", part.id.value, path + ".end_mm",
                        {{"part", name}, {"start_mm", part.x_mm}, {"end_mm", line->end_mm}, {"length_mm", *m_length_mm}},
                        "beyond");
            }
        }
    }

    void checkSupports()
    {
        const auto& supports = m_arrangement.supports;
        for (std::size_t i = 0; i < supports.size(); ++i) {
            const Support& support = supports[i];
            const std::string path = "supports." + support.id.value;
            const std::string name = nameOf(support);
            const double end_mm = m_length_mm.value_or(largest_length_mm);
            if (!std::isfinite(support.x_mm) ||
                (m_length_mm && (support.x_mm < -place_tolerance_mm || support.x_mm > end_mm + place_tolerance_mm)))
                add(Severity::stop, "support-place", support.id.value, path + ".x_mm",
                    {{"support", name}, {"length_mm", end_mm}, {"x_mm", support.x_mm}}, "outside");
            for (std::size_t k = 0; k < i; ++k) {
                const Support& other = supports[k];
                const double distance_mm = std::abs(support.x_mm - other.x_mm);
                const std::string other_name = nameOf(other);
                const bool beside = support.role == Role::axial_only || other.role == Role::axial_only;
                const double widths_mm =
                    (support.bearing ? support.bearing->width_mm() : 0.0) + (other.bearing ? other.bearing->width_mm() : 0.0);
                if (distance_mm < 1e-3)
                    add(Severity::stop, "support-place", support.id.value, path + ".x_mm",
                        {{"support", name}, {"other", other_name}, {"x_mm", support.x_mm}}, "same");
                else if (distance_mm < 0.1)
                    add(Severity::caution, "support-place", support.id.value, path + ".x_mm",
                        {{"support", name}, {"other", other_name}, {"distance_mm", distance_mm}}, "close");
                else if (!beside && distance_mm < 0.5 * widths_mm - 1e-9)
                    add(Severity::stop, "support-place", support.id.value, path + ".x_mm",
                        {{"support", name}, {"other", other_name}, {"distance_mm", distance_mm}, {"needed_mm", 0.5 * widths_mm}},
                        "overlap");
            }
            const auto positive = [&](const std::optional<double>& value, double low, double high, const char* input) {
                if (value)
                    within(*value, low, high, support.id.value, path + "." + input);
            };
            positive(support.greatest_outer_mm, 1e-3, largest_diameter_mm, "greatest_outer_mm");
            positive(support.greatest_width_mm, 1e-3, largest_length_mm, "greatest_width_mm");
            positive(support.required_L_h, 1e-3, 1e9, "required_L_h");
            positive(support.reliability_percent, 50.0, 99.95, "reliability_percent");
            positive(support.required_S0, 0.1, 100.0, "required_S0");
            positive(support.play_mm, 0.0, 1000.0, "play_mm");
            positive(support.mounting_error_mrad, 0.0, 100.0, "mounting_error_mrad");
            if (support.prescribed) {
                const PrescribedDisplacement& given = *support.prescribed;
                within(given.x_mm, -1000.0, 1000.0, support.id.value, path + ".prescribed.x_mm");
                within(given.y_mm, -1000.0, 1000.0, support.id.value, path + ".prescribed.y_mm");
                within(given.z_mm, -1000.0, 1000.0, support.id.value, path + ".prescribed.z_mm");
                within(given.ry_mrad, -1000.0, 1000.0, support.id.value, path + ".prescribed.ry_mrad");
                within(given.rz_mrad, -1000.0, 1000.0, support.id.value, path + ".prescribed.rz_mrad");
            }
            checkElastic(support, path);
            if (support.bearing)
                checkBearing(support, path + ".bearing");
        }
    }

    void checkElastic(const Support& support, const std::string& path)
    {
        if (support.elastic) {
            const Matrix5& K = support.elastic->stiffness;
            double largest = 0.0;
            bool finite = true;
            for (const auto& row : K) {
                for (const double entry : row) {
                    finite = finite && std::isfinite(entry);
                    largest = std::max(largest, std::abs(entry));
                }
            }
            bool symmetric = true;
            for (std::size_t r = 0; r < 5; ++r) {
                for (std::size_t c = 0; c < r; ++c)
                    symmetric = symmetric && std::abs(K[r][c] - K[c][r]) <= 1e-9 * largest;
            }
            const bool negative = finite && !positiveSemidefinite(K, largest);
            if (!finite || !symmetric || negative)
                add(Severity::stop, "support-stiffness", support.id.value, path + ".elastic", {{"support", nameOf(support)}},
                    !finite      ? "not_finite"
                    : !symmetric ? "not_symmetric"
                                 : "negative");
        }
        if (support.gap) {
            if (!(support.gap->gap_mm >= 0.0) || !(support.gap->stiffness > 0.0) || !(support.gap->exponent >= 1.0) ||
                !std::isfinite(support.gap->stiffness) || !std::isfinite(support.gap->gap_mm) || !(support.gap->exponent <= 3.0))
                add(Severity::stop, "support-stiffness", support.id.value, path + ".gap", {{"support", nameOf(support)}}, "gap");
            if (support.elastic && (support.elastic->stiffness[1][1] != 0.0 || support.elastic->stiffness[2][2] != 0.0))
                add(Severity::stop, "support-rigid-and-spring", support.id.value, path + ".gap", {{"support", nameOf(support)}},
                    "gap");
        }
    }

    void checkBearing(const Support& support, const std::string& path)
    {
        const BearingChoice& bearing = *support.bearing;
        if (bearing.rows.empty()) {
            add(Severity::stop, "value-invalid", support.id.value, path + ".rows", {{"path", path + ".rows"}}, "empty");
            return;
        }
        for (std::size_t i = 0; i < bearing.rows.size(); ++i) {
            const CatalogueRow& row = bearing.rows[i].row;
            const std::string row_path = path + ".rows." + std::to_string(i + 1);
            bool good = within(row.bore_mm, 1e-3, largest_diameter_mm, support.id.value, row_path + ".bore_mm");
            good = within(row.outer_mm, 1e-3, largest_diameter_mm, support.id.value, row_path + ".outer_mm") && good;
            within(row.width_mm, 1e-3, largest_length_mm, support.id.value, row_path + ".width_mm");
            within(row.C_N, 1e-6, largest_magnitude, support.id.value, row_path + ".C_N");
            within(row.C0_N, 1e-6, largest_magnitude, support.id.value, row_path + ".C0_N");
            const auto stated = [&](const std::optional<double>& value, double low, double high, const char* input) {
                if (value)
                    within(*value, low, high, support.id.value, row_path + "." + input);
            };
            within(row.contact_angle_deg, 0.0, 90.0, support.id.value, row_path + ".contact_angle_deg");
            stated(row.Cu_N, 0.0, largest_magnitude, "Cu_N");
            stated(row.f0, 0.0, 1000.0, "f0");
            stated(row.e, 0.0, 1000.0, "e");
            stated(row.X, 0.0, 1000.0, "X");
            stated(row.Y, 0.0, 1000.0, "Y");
            stated(row.Y0, 0.0, 1000.0, "Y0");
            stated(row.pressure_centre_mm, -largest_diameter_mm, largest_diameter_mm, "pressure_centre_mm");
            stated(row.axial_limit_N, 0.0, largest_magnitude, "axial_limit_N");
            stated(row.speed_limit_rpm, 0.0, 1e7, "speed_limit_rpm");
            stated(row.mass_kg, 0.0, largest_magnitude, "mass_kg");
            if (good && row.bore_mm >= row.outer_mm)
                add(Severity::stop, "value-invalid", support.id.value, row_path + ".outer_mm",
                    {{"path", row_path + ".outer_mm"}, {"bore_mm", row.bore_mm}, {"outer_mm", row.outer_mm}}, "ring");
            if (row.source.empty())
                add(Severity::stop, "value-invalid", support.id.value, row_path + ".source", {{"path", row_path + ".source"}},
                    "source");
        }
    }

    void checkDuty()
    {
        const Duty& duty = m_arrangement.duty;
        if (duty.required_L_h)
            within(*duty.required_L_h, 1e-3, 1e9, "", "duty.required_L_h");
        if (duty.reliability_percent)
            within(*duty.reliability_percent, 50.0, 99.95, "", "duty.reliability_percent");
        if (duty.K_A)
            within(*duty.K_A, 0.1, 10.0, "", "duty.K_A");
        double sum = 0.0;
        bool good = true;
        for (const LoadCase& load_case : duty.load_cases) {
            const std::string path = "duty.load_cases." + load_case.id.value;
            if (!std::isfinite(load_case.time_share) || load_case.time_share < 0.0) {
                add(Severity::stop, "duty-share", load_case.id.value, path + ".time_share",
                    {{"case", load_case.name.empty() ? load_case.id.value : load_case.name},
                     {"time_share", load_case.time_share}},
                    std::isfinite(load_case.time_share) ? "negative" : "not_finite");
                good = false;
            }
            sum += load_case.time_share;
            within(load_case.speed_rpm, -1e6, 1e6, load_case.id.value, path + ".speed_rpm");
            within(load_case.power_factor, -100.0, 100.0, load_case.id.value, path + ".power_factor");
            within(load_case.free_load_factor, -100.0, 100.0, load_case.id.value, path + ".free_load_factor");
            if (load_case.peak_factor)
                within(*load_case.peak_factor, 0.1, 100.0, load_case.id.value, path + ".peak_factor");
            if (load_case.shaft_temperature_C)
                within(*load_case.shaft_temperature_C, -100.0, 600.0, load_case.id.value, path + ".shaft_temperature_C");
            if (load_case.housing_temperature_C)
                within(*load_case.housing_temperature_C, -100.0, 600.0, load_case.id.value, path + ".housing_temperature_C");
            for (const auto& [part_id, settings] : load_case.parts) {
                if (findPart(m_arrangement, part_id) == nullptr)
                    add(Severity::stop, "value-invalid", load_case.id.value, path + ".parts." + part_id.value,
                        {{"path", path + ".parts." + part_id.value}, {"id", part_id.value}}, "reference");
                if (settings.power_factor)
                    within(*settings.power_factor, -100.0, 100.0, load_case.id.value,
                           path + ".parts." + part_id.value + ".power_factor");
            }
        }
        if (good && !duty.load_cases.empty() && std::abs(sum - 1.0) > 1e-6)
            add(sum > 0.0 ? Severity::caution : Severity::stop, "duty-share", "", "duty.load_cases", {{"sum", sum}}, "sum");
    }

    void checkSurroundings()
    {
        const Surroundings& s = m_arrangement.surroundings;
        const auto check = [&](const std::optional<double>& value, double low, double high, const char* input) {
            if (value)
                within(*value, low, high, "", std::string("surroundings.") + input);
        };
        check(s.temperature_C, -100.0, 600.0, "temperature_C");
        check(s.ambient_C, -100.0, 600.0, "ambient_C");
        check(s.assembly_C, -100.0, 600.0, "assembly_C");
        check(s.attitude_deg, -90.0, 90.0, "attitude_deg");
        check(s.swing_deg, 0.0, 360.0, "swing_deg");
        check(s.swings_per_min, 0.0, 1e5, "swings_per_min");
        check(s.viscosity_grade, 1.0, 1e4, "viscosity_grade");
        for (const auto& [criterion, weight] : s.weights)
            within(weight, 0.0, 1000.0, "", "surroundings.weights." + criterion);
    }

    void checkRequirements()
    {
        for (const Requirement& requirement : m_arrangement.requirements) {
            const std::string path = "requirements." + requirement.id.value;
            within(requirement.limit, 1e-12, largest_magnitude, requirement.id.value, path + ".limit");
            const bool placed =
                requirement.kind == RequirementKind::deflection_at || requirement.kind == RequirementKind::slope_at;
            if (requirement.where.empty()) {
                if (placed && !requirement.x_mm)
                    add(Severity::stop, "value-invalid", requirement.id.value, path + ".where", {{"path", path + ".where"}},
                        "place");
            } else if (findPart(m_arrangement, PartId(requirement.where)) == nullptr &&
                       findSupport(m_arrangement, SupportId(requirement.where)) == nullptr) {
                add(Severity::stop, "value-invalid", requirement.id.value, path + ".where",
                    {{"path", path + ".where"}, {"id", requirement.where}}, "reference");
            }
            if (requirement.x_mm)
                within(*requirement.x_mm, 0.0, m_length_mm.value_or(largest_length_mm), requirement.id.value, path + ".x_mm");
        }
    }
};

} // namespace

Findings checkArrangement(const Arrangement& arrangement)
{
    return Checker(arrangement).run();
}

} // namespace shaftwright
