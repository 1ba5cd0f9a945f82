// Belts and chains: two strands along the common tangents of the two wheels.
#include "core/loads/part_builder.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shaftwright::loads
{
namespace
{

/// Effective forces of the strands; the centrifugal part is balanced by the bend of the belt and does not load the shaft.
struct Strands {
    double tight_N = 0.0, slack_N = 0.0;
};

/// The two wheels of the drive, seen from this one.
struct TwoWheels {
    double diameter_mm = 0.0, other_mm = 0.0, centre_mm = 0.0;
    bool crossed = false;
    double direction_deg = 0.0;

    /// sin of the angle between a strand and the centre line; positive when the strands close towards this wheel.
    [[nodiscard]] double sinG() const
    {
        return (crossed ? -(other_mm + diameter_mm) : other_mm - diameter_mm) / (2.0 * centre_mm);
    }
    [[nodiscard]] double wrap_rad() const { return std::numbers::pi - 2.0 * std::asin(sinG()); }
};

/// Sizes that leave room between the wheels; then |sin g| < 1 as well.
bool checkGeometry(PartBuilder& build, const TwoWheels& drive, const char* own, const char* other)
{
    for (const auto& [value, input] : {std::pair{drive.diameter_mm, own}, std::pair{drive.other_mm, other}}) {
        if (!(value > 0.0)) {
            build.stop("belt-geometry", input, {{"value", value}}, "", "diameter");
            return false;
        }
    }
    const double least_mm = 0.5 * (drive.diameter_mm + drive.other_mm);
    if (!(drive.centre_mm > least_mm)) {
        build.stop("belt-geometry", "centre_distance_mm", {{"centre_distance_mm", drive.centre_mm}, {"least_mm", least_mm}});
        return false;
    }
    return true;
}

/// u+- = cos g e +- sin g n, e towards the other axis, n = e turned by +90 degrees. A pull in u- turns this wheel
/// positively, so the tight strand is u- for Mx > 0. Derived: statics of the wheel.
void pushStrands(PartBuilder& build, const TwoWheels& drive, double Mx, const Strands& strands, Derivation derivation)
{
    const double sin_g = drive.sinG();
    const double cos_g = std::sqrt(1.0 - sin_g * sin_g);
    const Directions at(drive.direction_deg);
    const double minus_N = Mx > 0.0 ? strands.tight_N : strands.slack_N;
    const double plus_N = Mx > 0.0 ? strands.slack_N : strands.tight_N;
    const double along_N = cos_g * (plus_N + minus_N);
    const double across_N = sin_g * (plus_N - minus_N);
    PartLoad load = build.blank();
    load.force_N = {0.0, along_N * at.cosine - across_N * at.sine, along_N * at.sine + across_N * at.cosine};
    load.moment_Nmm = {Mx, 0.0, 0.0};
    load.torque_Nmm = Mx;
    load.tangential_N = 2.0 * std::abs(Mx) / drive.diameter_mm;
    load.radial_N = std::hypot(load.force_N.y, load.force_N.z);
    load.diameter_mm = drive.diameter_mm;
    load.derivation = std::move(derivation);
    const double g_deg = std::asin(sin_g) / degree;
    step(load, "strand_angle", "g", drive.crossed ? "asin(-(d_other + d) / (2 a))" : "asin((d_other - d) / (2 a))",
         {{"d_other", drive.other_mm}, {"d", drive.diameter_mm}, {"a", drive.centre_mm}}, g_deg, "\u00b0",
         "geometry of the drive");
    step(load, "shaft_load", "F", "sqrt(T1^2 + T2^2 + 2 T1 T2 cos(2 g))",
         {{"T1", strands.tight_N}, {"T2", strands.slack_N}, {"g", g_deg}}, load.radial_N, "N", "statics of the wheel");
    build.push(std::move(load));
}

/// What a way of stating the tension needs to know.
struct Useful {
    double Ft_N = 0.0;         ///< size of the useful force with all factors
    double nominal_Ft_N = 0.0; ///< without them; 0 when the case says nothing about it
    double scale = 1.0;        ///< the factors
    double diameter_mm = 0.0;
};

/// Strand forces, or none and a stop.
std::optional<Strands> strandsOf(PartBuilder& build, const TensionFactor& way, const Useful& useful, PartLoad& scratch)
{
    const double k = way.force_over_useful;
    if (!(k >= 1.0)) {
        build.stop("belt-ratio", "tension.force_over_useful", {{"value", k}, {"low", 1.0}}, "", "factor");
        return std::nullopt;
    }
    const double Ft = useful.Ft_N;
    const Strands strands{0.5 * (k + 1.0) * Ft, 0.5 * (k - 1.0) * Ft};
    step(scratch, "belt_tight", "T1", "(k + 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.tight_N, "N", "handbook factor k");
    step(scratch, "belt_slack", "T2", "(k - 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.slack_N, "N", "handbook factor k");
    return strands;
}

std::optional<Strands> strandsOf(PartBuilder& build, const TensionRatio& way, const Useful& useful, PartLoad& scratch)
{
    const double rho = way.tight_over_slack;
    if (!(rho > 1.0)) {
        build.stop("belt-ratio", "tension.tight_over_slack", {{"value", rho}, {"low", 1.0}}, "", "ratio");
        return std::nullopt;
    }
    const double Ft = useful.Ft_N;
    const double T2 = Ft / (rho - 1.0);
    step(scratch, "belt_slack", "T2", "Ft / (rho - 1)", {{"Ft", Ft}, {"rho", rho}}, T2, "N", "definition of the ratio");
    step(scratch, "belt_tight", "T1", "T2 + Ft", {{"T2", T2}, {"Ft", Ft}}, T2 + Ft, "N", "equilibrium");
    return Strands{T2 + Ft, T2};
}

/// A fixed centre distance: the sum of the strand forces stays, the useful force splits it.
std::optional<Strands> aroundMean(PartBuilder& build, double mean_N, double lost_N, double Ft, const char* input,
                                  PartLoad& scratch)
{
    if (!(mean_N >= 0.5 * Ft)) {
        build.stopInCase("belt-slack", input, {{"F0_N", mean_N + lost_N}, {"least_N", 0.5 * Ft + lost_N}, {"Ft_N", Ft}},
                         "equilibrium of the strands");
        return std::nullopt;
    }
    step(scratch, "belt_tight", "T1", "F0 + Ft / 2", {{"F0", mean_N}, {"Ft", Ft}}, mean_N + 0.5 * Ft, "N",
         "fixed centre distance");
    step(scratch, "belt_slack", "T2", "F0 - Ft / 2", {{"F0", mean_N}, {"Ft", Ft}}, mean_N - 0.5 * Ft, "N",
         "fixed centre distance");
    return Strands{mean_N + 0.5 * Ft, mean_N - 0.5 * Ft};
}

std::optional<Strands> strandsOf(PartBuilder& build, const Pretension& way, const Useful& useful, PartLoad& scratch)
{
    if (!(way.strand_N >= 0.0)) {
        build.stop("value-invalid", "tension.strand_N",
                   {{"path", "parts." + build.part().id.value + ".tension.strand_N"},
                    {"value", way.strand_N},
                    {"low", 0.0},
                    {"high", 1e9}});
        return std::nullopt;
    }
    double lost_N = 0.0;
    if (way.belt_mass_kg_m) {
        const double q = *way.belt_mass_kg_m;
        if (!(q >= 0.0)) {
            build.stop("value-invalid", "tension.belt_mass_kg_m",
                       {{"path", "parts." + build.part().id.value + ".tension.belt_mass_kg_m"},
                        {"value", q},
                        {"low", 0.0},
                        {"high", 1e4}});
            return std::nullopt;
        }
        const double v = std::numbers::pi * useful.diameter_mm * std::abs(build.loadCase().speed_rpm) / 60000.0;
        lost_N = q * v * v;
        step(scratch, "belt_centrifugal", "F0", "F_set - q v^2", {{"F_set", way.strand_N}, {"q", q}, {"v", v}},
             way.strand_N - lost_N, "N", "momentum of the running belt");
    }
    return aroundMean(build, way.strand_N - lost_N, lost_N, useful.Ft_N, "tension.strand_N", scratch);
}

/// Given at the nominal torque. With another torque of the case their sum stays and their difference follows it.
std::optional<Strands> strandsOf(PartBuilder& build, const StrandForces& way, const Useful& useful, PartLoad& scratch)
{
    if (!(way.tight_N > way.slack_N && way.slack_N >= 0.0)) {
        build.stop("belt-ratio", "tension.tight_N", {{"value", way.tight_N}, {"low", std::max(0.0, way.slack_N)}}, "", "strands");
        return std::nullopt;
    }
    const double difference_N = way.tight_N - way.slack_N;
    if (useful.nominal_Ft_N > 0.0 && std::abs(difference_N - useful.nominal_Ft_N) > 0.01 * useful.nominal_Ft_N) {
        build.stopInCase("part-torque-contradiction", "tension.tight_N",
                         {{"tight_N", way.tight_N},
                          {"slack_N", way.slack_N},
                          {"torque_Nmm", 0.5 * useful.diameter_mm * useful.nominal_Ft_N},
                          {"torque_from_strands_Nmm", 0.5 * useful.diameter_mm * difference_N}},
                         "equilibrium", "strands");
        return std::nullopt;
    }
    if (useful.scale == 1.0) {
        step(scratch, "belt_tight", "T1", "given", {}, way.tight_N, "N", "input");
        step(scratch, "belt_slack", "T2", "given", {}, way.slack_N, "N", "input");
        return Strands{way.tight_N, way.slack_N};
    }
    const double mean_N = 0.5 * (way.tight_N + way.slack_N);
    step(scratch, "belt_mean", "F0", "(T1_given + T2_given) / 2", {{"T1_given", way.tight_N}, {"T2_given", way.slack_N}}, mean_N,
         "N", "fixed centre distance");
    return aroundMean(build, mean_N, 0.0, useful.scale * difference_N, "tension.tight_N", scratch);
}

/// Eytelwein: T1/T2 <= exp(mu wrap), in a groove mu / sin(half its angle). Only when friction is stated.
void checkSlip(PartBuilder& build, const BeltPulley& pulley, const TwoWheels& drive, const Strands& strands)
{
    if (pulley.kind == BeltKind::toothed || !pulley.friction || strands.tight_N <= strands.slack_N)
        return;
    const double mu = *pulley.friction;
    if (!(mu >= 0.0 && mu <= 2.0)) {
        build.stop("value-invalid", "friction",
                   {{"path", "parts." + build.part().id.value + ".friction"}, {"value", mu}, {"low", 0.0}, {"high", 2.0}});
        return;
    }
    double in_groove = 1.0;
    if (pulley.kind != BeltKind::flat) {
        const double groove_deg = build.assume(pulley.groove_deg, "groove_deg", 38.0, "\u00b0", "groove_38");
        if (!(groove_deg > 0.0 && groove_deg < 180.0)) {
            build.stop("value-invalid", "groove_deg",
                       {{"path", "parts." + build.part().id.value + ".groove_deg"},
                        {"value", groove_deg},
                        {"low", 0.0},
                        {"high", 180.0}});
            return;
        }
        in_groove = 1.0 / std::sin(0.5 * groove_deg * degree);
    }
    const double wrap = drive.wrap_rad();
    const double limit = std::exp(mu * in_groove * wrap);
    const char* source = "Eytelwein's rope equation";
    if (strands.slack_N <= 0.0) {
        build.reportInCase(Severity::caution, "belt-slips", "tension", {{"limit", limit}, {"wrap_deg", wrap / degree}}, source,
                           "no_slack_force");
    } else if (const double ratio = strands.tight_N / strands.slack_N; ratio > limit) {
        build.reportInCase(Severity::caution, "belt-slips", "tension",
                           {{"ratio", ratio},
                            {"limit", limit},
                            {"wrap_deg", wrap / degree},
                            {"mu", mu},
                            {"mu_needed", std::log(ratio) / (wrap * in_groove)}},
                           source);
    }
}

} // namespace

void addPart(PartBuilder& build, const BeltPulley& pulley)
{
    const TwoWheels drive{pulley.diameter_mm, pulley.other_diameter_mm, pulley.centre_distance_mm, pulley.crossed,
                          pulley.direction_deg};
    if (!checkGeometry(build, drive, "diameter_mm", "other_diameter_mm"))
        return;
    BeltTension tension;
    if (pulley.tension) {
        tension = *pulley.tension;
    } else {
        // Flat, V, ribbed, toothed: handbooks, from memory.
        static constexpr double factors[] = {2.0, 1.5, 1.5, 1.1};
        static constexpr const char* reasons[] = {"belt_factor_flat", "belt_factor_v", "belt_factor_v", "belt_factor_toothed"};
        const auto kind = static_cast<std::size_t>(pulley.kind);
        tension = TensionFactor{build.assume(std::nullopt, "tension.force_over_useful", factors[kind], "", reasons[kind])};
    }
    // A tension roller: no drive, but a belt that pulls.
    const bool roller = !build.part().drive && std::holds_alternative<Pretension>(tension);
    const MeshTorque* torque = roller ? nullptr : build.neededTorque(0);
    if (torque == nullptr && !roller)
        return;
    const double Mx = roller ? 0.0 : torque->Mx_Nmm;
    const double d = drive.diameter_mm;
    Useful useful;
    useful.diameter_mm = d;
    useful.Ft_N = 2.0 * std::abs(Mx) / d;
    useful.scale = roller ? 0.0 : std::abs(torque->factor) * torque->K_A;
    useful.nominal_Ft_N = useful.scale > 0.0 ? useful.Ft_N / useful.scale : 0.0;

    PartLoad scratch;
    build.torqueSteps(scratch, 0);
    step(scratch, "belt_useful_force", "Ft", "2 T / d", {{"T", std::abs(Mx)}, {"d", d}}, useful.Ft_N, "N",
         "definition of torque");
    const auto strands = std::visit([&](const auto& way) { return strandsOf(build, way, useful, scratch); }, tension);
    if (!strands)
        return;
    checkSlip(build, pulley, drive, *strands);
    pushStrands(build, drive, Mx, *strands, std::move(scratch.derivation));
}

void addPart(PartBuilder& build, const ChainSprocket& sprocket)
{
    for (const auto& [teeth, input] : {std::pair{sprocket.teeth, "teeth"}, std::pair{sprocket.other_teeth, "other_teeth"}}) {
        if (teeth < 6) {
            build.stop("gear-size", input, {{"value", double(teeth)}, {"low", 6.0}}, "", "teeth");
            return;
        }
        build.caution(teeth < 17 || teeth > 120, input, teeth, 17.0, 120.0);
    }
    if (!(sprocket.pitch_mm > 0.0)) {
        build.stop("gear-size", "pitch_mm", {{"value", sprocket.pitch_mm}}, "", "diameter");
        return;
    }
    const double d = sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.teeth);
    const double other = sprocket.pitch_mm / std::sin(std::numbers::pi / sprocket.other_teeth);
    const TwoWheels drive{d, other, sprocket.centre_distance_mm, false, sprocket.direction_deg};
    if (!checkGeometry(build, drive, "teeth", "other_teeth"))
        return;
    if (sprocket.sag_force_N && !(*sprocket.sag_force_N >= 0.0)) {
        build.stop("belt-ratio", "sag_force_N", {{"value", *sprocket.sag_force_N}, {"low", 0.0}}, "", "sag");
        return;
    }
    const MeshTorque* torque = build.neededTorque(0);
    if (torque == nullptr)
        return;
    const double Mx = torque->Mx_Nmm;
    PartLoad scratch;
    build.torqueSteps(scratch, 0);
    step(scratch, "sprocket_diameter", "d", "p / sin(180\u00b0/z)", {{"p", sprocket.pitch_mm}, {"z", double(sprocket.teeth)}}, d,
         "mm", "ISO 606");
    const double Ft = 2.0 * std::abs(Mx) / d;
    step(scratch, "tangential_force", "Ft", "2 T / d", {{"T", std::abs(Mx)}, {"d", d}}, Ft, "N", "definition of torque");
    Strands strands;
    if (sprocket.sag_force_N) {
        const double Fs = *sprocket.sag_force_N;
        strands = {Ft + Fs, Fs};
        step(scratch, "belt_tight", "T1", "Ft + Fs", {{"Ft", Ft}, {"Fs", Fs}}, strands.tight_N, "N", "sag of the slack strand");
    } else {
        const double k = build.assume(sprocket.force_factor, "force_factor", 1.05, "", "chain_factor");
        if (!(k >= 1.0)) {
            build.stop("belt-ratio", "force_factor", {{"value", k}, {"low", 1.0}}, "", "factor");
            return;
        }
        build.caution(k > 1.5, "force_factor", k, 1.0, 1.5);
        strands = {0.5 * (k + 1.0) * Ft, 0.5 * (k - 1.0) * Ft};
        step(scratch, "belt_tight", "T1", "(k + 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.tight_N, "N", "handbook factor k");
        step(scratch, "belt_slack", "T2", "(k - 1) Ft / 2", {{"k", k}, {"Ft", Ft}}, strands.slack_N, "N", "handbook factor k");
    }
    pushStrands(build, drive, Mx, strands, std::move(scratch.derivation));
}

} // namespace shaftwright::loads
