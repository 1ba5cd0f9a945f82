#pragma once
// What the force systems of all kinds of parts share: findings, assumptions, torque, directions. Internal to core/loads.

#include "core/loads/part_forces.h"

#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace shaftwright::loads
{

inline constexpr double degree = std::numbers::pi / 180.0;

/// Radial and tangential unit vectors at angle phi about +x, from +y towards +z; e_r x e_t = e_x.
struct Directions {
    double cosine, sine;
    explicit Directions(double phi_deg);
};

[[nodiscard]] double signOf(double value);
[[nodiscard]] double handSign(Hand hand);

/// Adds one line of the hand calculation. Names of the inputs are the symbols of the formula.
void step(PartLoad& load, const char* code, const char* symbol, const char* formula, NamedValues inputs, double result,
          const char* unit, const char* source);

/// Force from components in e_r, e_t, e_x at radius r; M = r e_r x F = (r Ft, r Fx sin phi, -r Fx cos phi).
void place(PartLoad& load, const Directions& at, double radius_mm, double Fr, double Ft, double Fx);

/// The part under work: where its findings, assumptions and loads go.
class PartBuilder
{
public:
    PartBuilder(const PartContext& context, std::vector<PartLoad>& loads);

    [[nodiscard]] const PartContext& context() const { return m_context; }
    [[nodiscard]] const Part& part() const { return *m_context.part; }
    [[nodiscard]] const LoadCase& loadCase() const { return *m_context.load_case; }
    [[nodiscard]] const std::string& caseName() const { return loadCase().name.empty() ? loadCase().id.value : loadCase().name; }
    [[nodiscard]] bool stopped() const { return m_stopped; }

    /// Findings about an input hold in every case; those `InCase` name the case.
    /// @param input key below `parts.<id>.`
    void report(Severity severity, const char* code, const std::string& input, NamedValues values, const char* source,
                const char* variant = "");
    void reportInCase(Severity severity, const char* code, const std::string& input, NamedValues values, const char* source,
                      const char* variant = "");
    /// A stop leaves the part out.
    void stop(const char* code, const std::string& input, NamedValues values, const char* source = "", const char* variant = "");
    void stopInCase(const char* code, const std::string& input, NamedValues values, const char* source = "",
                    const char* variant = "");

    /// The input, or `value` as an assumption with a reason of resources/text.
    double assume(const std::optional<double>& input, const char* name, double value, const char* unit, const char* reason);

    /// Caution `value-unusual` when a value lies outside the usual range of handbooks.
    void caution(bool unusual, const char* input, double value, double low, double high);
    /// Normal pressure angle in its hard range, else a stop; a caution outside the usual range.
    bool checkPressureAngle(double angle_deg, double usual_low_deg, double usual_high_deg);

    /// None: the part has no drive, or its torque could not be settled (a finding stands then).
    [[nodiscard]] const MeshTorque* torque(std::size_t mesh) const;
    /// Torque of a part that gives no load without one; `part-torque-missing` when it has no drive at all.
    [[nodiscard]] const MeshTorque* neededTorque(std::size_t mesh);
    void torqueSteps(PartLoad& load, std::size_t mesh);
    /// Whether the part gives power away here: its torque opposes the rotation; at standstill the stated sense decides.
    [[nodiscard]] bool givesPower(const MeshTorque& torque) const;

    [[nodiscard]] PartLoad blank() const;
    void push(PartLoad load);

private:
    const PartContext& m_context;
    std::vector<PartLoad>& m_loads;
    bool m_stopped = false;
};

// One function a kind; each stops or pushes the loads of the meshes.
void addPart(PartBuilder& build, const CylindricalGear& gear);
void addPart(PartBuilder& build, const BevelGear& gear);
void addPart(PartBuilder& build, const Worm& worm);
void addPart(PartBuilder& build, const WormWheel& wheel);
void addPart(PartBuilder& build, const BeltPulley& pulley);
void addPart(PartBuilder& build, const ChainSprocket& sprocket);
void addPart(PartBuilder& build, const Coupling& coupling);
void addPart(PartBuilder& build, const Impeller& impeller);
void addPart(PartBuilder& build, const WeightBody& weight);
void addPart(PartBuilder& build, const PointLoad& point);
void addPart(PartBuilder& build, const DistributedLoad& line);

} // namespace shaftwright::loads
