#include "core/report/part_words.h"

#include <cmath>
#include <variant>

namespace shaftwright::report
{
namespace
{

class Speller
{
public:
    explicit Speller(const Wording& words) : m_words(words) {}

    Speller& add(const std::string& text)
    {
        if (!text.empty())
            m_text += (m_text.empty() ? "" : ", ") + text;
        return *this;
    }
    Speller& say(const char* key, const NamedValues& values = {})
    {
        return add(m_words.say(std::string("input.") + key, values));
    }
    /// A number with its unit, left out when it is 0 and 0 means "not stated".
    Speller& stated(const char* key, double value) { return value != 0.0 ? say(key, {{"value", value}}) : *this; }
    Speller& stated(const char* key, const std::optional<double>& value) { return value ? say(key, {{"value", *value}}) : *this; }
    [[nodiscard]] const std::string& text() const { return m_text; }

    // --- Parts -----------------------------------------------------------------------------------------------------

    void drive(const Drive& drive)
    {
        const char* sense = drive.power == PowerSense::driving ? "driving" : "driven";
        if (drive.takes_remaining) {
            say("takes_remaining");
            if (drive.sense_fixed)
                say(sense);
            return;
        }
        say(sense);
        if (drive.power_kW)
            say("power", {{"value", *drive.power_kW}});
        if (drive.torque_Nmm)
            say("torque", {{"value", *drive.torque_Nmm / 1000.0}});
    }

    void hand(Hand hand)
    {
        if (hand != Hand::none)
            say(hand == Hand::right ? "hand_right" : "hand_left");
    }

    void operator()(const CylindricalGear& gear)
    {
        if (gear.internal)
            say("internal");
        if (gear.teeth > 0)
            say("teeth", {{"value", double(gear.teeth)}});
        stated("normal_module", gear.normal_module_mm);
        if (gear.helix_deg != 0.0)
            say(gear.double_helical ? "double_helix" : "helix", {{"value", gear.helix_deg}});
        hand(gear.hand);
        stated("pressure_angle", gear.pressure_angle_deg);
        stated("working_diameter", gear.working_diameter_mm);
        if (gear.mate_teeth)
            say("mate_teeth", {{"value", double(*gear.mate_teeth)}});
        stated("centre_distance", gear.centre_distance_mm);
        stated("face_width", gear.face_width_mm);
        say("mesh_at", {{"value", gear.mesh_angle_deg}});
        for (const FurtherMesh& mesh : gear.further_meshes) {
            say("further_mesh_at", {{"value", mesh.mesh_angle_deg}});
            drive(mesh.drive);
        }
    }
    void operator()(const BevelGear& gear)
    {
        if (gear.teeth > 0)
            say("teeth", {{"value", double(gear.teeth)}});
        stated("outer_module", gear.outer_module_mm);
        stated("mean_diameter", gear.mean_diameter_mm);
        say("cone_angle", {{"value", gear.cone_angle_deg}});
        if (gear.spiral_deg != 0.0)
            say("spiral", {{"value", gear.spiral_deg}});
        hand(gear.hand);
        say(gear.apex == ApexSide::plus ? "apex_plus" : "apex_minus");
        stated("pressure_angle", gear.pressure_angle_deg);
        stated("face_width", gear.face_width_mm);
        say("mesh_at", {{"value", gear.mesh_angle_deg}});
    }
    void operator()(const Worm& worm)
    {
        if (!worm.lead_angle_deg)
            say("starts", {{"value", double(worm.starts)}});
        stated("axial_module", worm.axial_module_mm);
        stated("reference_diameter", worm.reference_diameter_mm);
        stated("lead_angle", worm.lead_angle_deg);
        hand(worm.hand);
        stated("pressure_angle", worm.pressure_angle_deg);
        stated("friction", worm.friction);
        say("mesh_at", {{"value", worm.mesh_angle_deg}});
    }
    void operator()(const WormWheel& wheel)
    {
        if (wheel.teeth > 0)
            say("teeth", {{"value", double(wheel.teeth)}});
        stated("reference_diameter", wheel.reference_diameter_mm);
        stated("lead_angle", wheel.lead_angle_deg);
        hand(wheel.hand);
        stated("pressure_angle", wheel.pressure_angle_deg);
        stated("friction", wheel.friction);
        stated("face_width", wheel.face_width_mm);
        say("mesh_at", {{"value", wheel.mesh_angle_deg}});
    }
    void operator()(const BeltPulley& pulley)
    {
        static constexpr const char* kinds[] = {"belt_flat", "belt_v", "belt_ribbed", "belt_toothed"};
        say(kinds[static_cast<std::size_t>(pulley.kind)]);
        say("diameter", {{"value", pulley.diameter_mm}});
        say("other_diameter", {{"value", pulley.other_diameter_mm}});
        say("centre_distance", {{"value", pulley.centre_distance_mm}});
        if (pulley.crossed)
            say("crossed");
        say("direction_at", {{"value", pulley.direction_deg}});
        if (pulley.tension) {
            if (const auto* factor = std::get_if<TensionFactor>(&*pulley.tension))
                say("tension_factor", {{"value", factor->force_over_useful}});
            else if (const auto* ratio = std::get_if<TensionRatio>(&*pulley.tension))
                say("tension_ratio", {{"value", ratio->tight_over_slack}});
            else if (const auto* pre = std::get_if<Pretension>(&*pulley.tension))
                say("pretension", {{"value", pre->strand_N}});
            else if (const auto* strands = std::get_if<StrandForces>(&*pulley.tension))
                say("strands", {{"tight_N", strands->tight_N}, {"slack_N", strands->slack_N}});
        }
        stated("friction", pulley.friction);
    }
    void operator()(const ChainSprocket& sprocket)
    {
        say("teeth", {{"value", double(sprocket.teeth)}});
        say("pitch", {{"value", sprocket.pitch_mm}});
        say("other_teeth", {{"value", double(sprocket.other_teeth)}});
        say("centre_distance", {{"value", sprocket.centre_distance_mm}});
        say("direction_at", {{"value", sprocket.direction_deg}});
        stated("force_factor", sprocket.force_factor);
        stated("sag_force", sprocket.sag_force_N);
    }
    void operator()(const Coupling& coupling)
    {
        if (coupling.radial_force_N) {
            if (const auto* given = std::get_if<GivenDirection>(&coupling.radial_direction))
                say("radial_force_at", {{"value", *coupling.radial_force_N}, {"angle", given->angle_deg}});
            else
                say("radial_force_any", {{"value", *coupling.radial_force_N}});
        }
        stated("axial_force", coupling.axial_force_N);
        if (coupling.bending_moment_Nmm)
            say("bending_moment",
                {{"value", *coupling.bending_moment_Nmm / 1000.0}, {"angle", coupling.bending_moment_axis_deg.value_or(0.0)}});
        stated("joint_angle", coupling.joint_angle_deg);
    }
    void operator()(const Impeller& impeller)
    {
        stated("thrust", impeller.thrust_N);
        if (impeller.radial_y_N != 0.0 || impeller.radial_z_N != 0.0)
            say("radial_yz", {{"y", impeller.radial_y_N}, {"z", impeller.radial_z_N}});
        if (impeller.offset_y_mm != 0.0 || impeller.offset_z_mm != 0.0)
            say("offset", {{"y", impeller.offset_y_mm}, {"z", impeller.offset_z_mm}});
        stated("rotating_force", impeller.rotating_radial_N);
    }
    void operator()(const WeightBody& weight)
    {
        if (const auto* grade = std::get_if<BalanceGrade>(&weight.unbalance))
            say("balance_grade", {{"value", grade->mm_s}});
        else if (const auto* unbalance = std::get_if<UnbalanceGmm>(&weight.unbalance))
            say("unbalance", {{"value", unbalance->kg_mm}});
        else if (const auto* eccentricity = std::get_if<MassEccentricity>(&weight.unbalance))
            say("eccentricity", {{"value", eccentricity->mm}});
    }
    void operator()(const PointLoad& point)
    {
        if (point.force_N != Vector3{})
            say("force_xyz", {{"x", point.force_N.x}, {"y", point.force_N.y}, {"z", point.force_N.z}});
        if (point.moment_Nmm != Vector3{})
            say("moment_xyz",
                {{"x", point.moment_Nmm.x / 1000.0}, {"y", point.moment_Nmm.y / 1000.0}, {"z", point.moment_Nmm.z / 1000.0}});
        if (point.offset_y_mm != 0.0 || point.offset_z_mm != 0.0)
            say("offset", {{"y", point.offset_y_mm}, {"z", point.offset_z_mm}});
        if (point.rotating)
            say("rotating");
    }
    void operator()(const DistributedLoad& line)
    {
        say("line_to", {{"value", line.end_mm}});
        const Vector3 &a = line.start_N_per_mm, &b = line.end_N_per_mm;
        if (a != Vector3{} || b != Vector3{}) {
            say("line_from", {{"x", a.x}, {"y", a.y}, {"z", a.z}});
            say("line_end", {{"x", b.x}, {"y", b.y}, {"z", b.z}});
        }
        if (line.start_torque_Nmm_per_mm != 0.0 || line.end_torque_Nmm_per_mm != 0.0)
            say("line_torque", {{"a", line.start_torque_Nmm_per_mm}, {"b", line.end_torque_Nmm_per_mm}});
    }

private:
    const Wording& m_words;
    std::string m_text;
};

} // namespace

std::string partWords(const Part& part, const Wording& words)
{
    Speller speller(words);
    std::visit(speller, part.body);
    if (part.drive)
        speller.drive(*part.drive);
    speller.stated("mass", part.mass_kg);
    return speller.text();
}

std::string supportWords(const Support& support, const Wording& words)
{
    Speller speller(words);
    speller.stated("greatest_outer", support.greatest_outer_mm);
    speller.stated("greatest_width", support.greatest_width_mm);
    speller.stated("required_life", support.required_L_h);
    speller.stated("reliability", support.reliability_percent);
    speller.stated("required_S0", support.required_S0);
    speller.stated("play", support.play_mm);
    speller.stated("mounting_error", support.mounting_error_mrad);
    if (!support.shaft_fit.empty() || !support.housing_fit.empty())
        speller.say("fits", {{"shaft", support.shaft_fit.empty() ? std::string("-") : support.shaft_fit},
                             {"housing", support.housing_fit.empty() ? std::string("-") : support.housing_fit}});
    static constexpr const char* kinds[] = {"shoulder", "retaining_ring", "nut", "sleeve", "end_plate", "cover", "nothing"};
    const auto hold = [&](const char* key, const std::optional<HoldKind>& kind) {
        if (kind)
            speller.say(key, {{"kind", std::string(kinds[static_cast<std::size_t>(*kind)])}});
    };
    hold("inner_left", support.holds.inner_left);
    hold("inner_right", support.holds.inner_right);
    hold("outer_left", support.holds.outer_left);
    hold("outer_right", support.holds.outer_right);
    if (support.elastic)
        speller.say("elastic");
    if (support.gap)
        speller.say("gap", {{"value", support.gap->gap_mm}});
    if (support.prescribed)
        speller.say("prescribed", {{"y", support.prescribed->y_mm}, {"z", support.prescribed->z_mm}});
    return speller.text();
}

std::string featureWords(const Feature& feature, const Wording& words)
{
    static constexpr const char* kinds[] = {"fillet", "chamfer",    "undercut", "groove",
                                            "keyway", "press_seat", "thread",   "centre_hole"};
    return words.say("input.feature", {{"kind", std::string(kinds[static_cast<std::size_t>(feature.kind)])},
                                       {"length", feature.length_mm},
                                       {"position", feature.position_mm}});
}

} // namespace shaftwright::report
