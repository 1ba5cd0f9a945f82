#pragma once
// One part on a thin shaft in one case, and small vector algebra for mates placed in space.

#include "core/loads/loads.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace shaftwright::test
{

inline constexpr double degree = std::numbers::pi / 180.0;

[[nodiscard]] inline Drive drivePower(PowerSense sense, double power_kW)
{
    Drive drive;
    drive.power = sense;
    drive.power_kW = power_kW;
    return drive;
}

[[nodiscard]] inline Drive driveTorque(PowerSense sense, double torque_Nmm)
{
    Drive drive;
    drive.power = sense;
    drive.torque_Nmm = torque_Nmm;
    return drive;
}

[[nodiscard]] inline Part partOf(const char* id, PartBody body, std::optional<Drive> drive, double x_mm = 100.0)
{
    Part part;
    part.id = PartId(id);
    part.x_mm = x_mm;
    part.drive = std::move(drive);
    part.body = std::move(body);
    return part;
}

/// Shaft of 200 mm and diameter 10 mm, one case.
struct Setup {
    Arrangement arrangement;
    Settled settled;

    explicit Setup(double speed_rpm = 1000.0)
    {
        Segment segment;
        segment.id = SegmentId("S1");
        segment.length_mm = 200.0;
        segment.outer_mm = 10.0;
        arrangement.shaft.segments = {segment};
        LoadCase load_case;
        load_case.id = CaseId("run");
        load_case.name = "running";
        load_case.speed_rpm = speed_rpm;
        settled.load_cases = {load_case};
    }
    Setup& add(Part part)
    {
        arrangement.parts.push_back(std::move(part));
        return *this;
    }
    [[nodiscard]] LoadCase& loadCase(std::size_t index = 0) { return settled.load_cases.at(index); }
    [[nodiscard]] LoadResult run() const { return evaluateLoads(arrangement, settled); }
};

[[nodiscard]] inline LoadResult runOne(PartBody body, std::optional<Drive> drive, double speed_rpm)
{
    return Setup(speed_rpm).add(partOf("P", std::move(body), std::move(drive))).run();
}

/// The load of one part alone; torques then never balance, which is not the matter here.
[[nodiscard]] inline PartLoad loadOf(PartBody body, std::optional<Drive> drive, double speed_rpm)
{
    const LoadResult result = runOne(std::move(body), std::move(drive), speed_rpm);
    if (result.cases.size() != 1 || result.cases[0].parts.size() != 1)
        throw std::runtime_error("no load: " + (result.findings.empty() ? std::string("?") : result.findings[0].code));
    return result.cases[0].parts[0];
}

[[nodiscard]] inline const Finding* find(const Findings& findings, const std::string& code)
{
    for (const Finding& finding : findings) {
        if (finding.code == code)
            return &finding;
    }
    return nullptr;
}

[[nodiscard]] inline double numberOf(const Finding& finding, const std::string& name)
{
    const TextValue* value = finding.values.find(name);
    if (value == nullptr || !std::holds_alternative<double>(*value))
        throw std::runtime_error("finding " + finding.code + " has no number " + name);
    return std::get<double>(*value);
}

[[nodiscard]] inline Vector3 operator+(const Vector3& a, const Vector3& b)
{
    return {a.x + b.x, a.y + b.y, a.z + b.z};
}
[[nodiscard]] inline Vector3 operator*(double k, const Vector3& a)
{
    return {k * a.x, k * a.y, k * a.z};
}
[[nodiscard]] inline double dot(const Vector3& a, const Vector3& b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
[[nodiscard]] inline Vector3 cross(const Vector3& a, const Vector3& b)
{
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(const Vector3& a)
{
    return std::sqrt(dot(a, a));
}
[[nodiscard]] inline Vector3 unit(const Vector3& a)
{
    return (1.0 / norm(a)) * a;
}

/// A part's own axes in space.
struct Frame {
    Vector3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};

    static Frame along(const Vector3& axis)
    {
        Frame frame;
        frame.x = unit(axis);
        const Vector3 other = std::abs(frame.x.x) < 0.9 ? Vector3{1, 0, 0} : Vector3{0, 1, 0};
        frame.y = unit(cross(other, frame.x));
        frame.z = cross(frame.x, frame.y);
        return frame;
    }
    [[nodiscard]] Vector3 toSpace(const Vector3& v) const { return v.x * x + v.y * y + v.z * z; }
    [[nodiscard]] double angleOf_deg(const Vector3& direction) const
    {
        return std::atan2(dot(direction, z), dot(direction, y)) / degree;
    }
};

} // namespace shaftwright::test
