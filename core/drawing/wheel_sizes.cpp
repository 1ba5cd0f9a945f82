#include "core/drawing/sections.h"
#include "core/drawing/wheel_shapes.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;

bool positive(double value)
{
    return std::isfinite(value) && value > 0.0;
}
double orElse(double value, double other)
{
    return positive(value) ? value : other;
}

// SPZ, SPA, SPB, SPC
constexpr std::array<VProfile, 4> profiles{
    {{8.5, 2.0, 9.0, 12.0, 8.0}, {11.0, 2.75, 11.0, 15.0, 10.0}, {14.0, 3.5, 14.0, 19.0, 12.5}, {19.0, 4.8, 19.0, 25.5, 17.0}}};

} // namespace

const VProfile& vProfileOf(const BeltPulley& pulley)
{
    const int n = std::clamp(pulley.grooves, 1, 40);
    if (positive(pulley.face_width_mm)) {
        const VProfile* nearest = &profiles[0];
        for (const VProfile& profile : profiles) {
            const auto width = [&](const VProfile& p) { return (n - 1) * p.pitch + 2.0 * p.edge; };
            if (std::abs(width(profile) - pulley.face_width_mm) < std::abs(width(*nearest) - pulley.face_width_mm))
                nearest = &profile;
        }
        return *nearest;
    }
    // Smallest pulleys that are usual for a profile.
    const std::size_t index = pulley.diameter_mm < 90.0 ? 0 : pulley.diameter_mm < 160.0 ? 1 : pulley.diameter_mm < 250.0 ? 2 : 3;
    return profiles[index];
}

double grooveAngle_deg(const BeltPulley& pulley, const VProfile& profile)
{
    if (pulley.groove_deg && *pulley.groove_deg > 10.0 && *pulley.groove_deg < 80.0)
        return *pulley.groove_deg;
    constexpr std::array<double, 4> upTo{80.0, 118.0, 190.0, 315.0};
    const auto index = static_cast<std::size_t>(&profile - profiles.data());
    return pulley.diameter_mm <= upTo[std::min(index, upTo.size() - 1)] ? 34.0 : 38.0;
}

GearSize sizeOf(const CylindricalGear& gear)
{
    GearSize size;
    const double m = orElse(gear.normal_module_mm, 0.0);
    const double beta = std::clamp(std::isfinite(gear.helix_deg) ? gear.helix_deg : 0.0, 0.0, 80.0) * pi / 180.0;
    double d = positive(m) && gear.teeth > 0 ? m * gear.teeth / std::cos(beta) : 0.0;
    if (!positive(d) && gear.working_diameter_mm)
        d = orElse(*gear.working_diameter_mm, 0.0);
    size.module_mm = positive(m) ? m : 0.03 * d;
    size.pitch_mm = 0.5 * d;
    const double sense = gear.internal ? -1.0 : 1.0;
    size.tip_mm = size.pitch_mm + sense * size.module_mm;
    size.root_mm = size.pitch_mm - sense * 1.25 * size.module_mm;
    size.width_known = positive(gear.face_width_mm);
    size.width_mm = size.width_known ? gear.face_width_mm : std::min(10.0 * size.module_mm, 0.6 * d);
    return size;
}

BevelSize sizeOf(const BevelGear& gear)
{
    BevelSize size;
    const double cone_deg = std::isfinite(gear.cone_angle_deg) ? std::clamp(gear.cone_angle_deg, 3.0, 87.0) : 45.0;
    size.cone_rad = cone_deg * pi / 180.0;
    const double s = std::sin(size.cone_rad);
    size.outer_mm = 0.5 * orElse(gear.outer_module_mm, 0.0) * std::max(gear.teeth, 0);
    const double mean = gear.mean_diameter_mm ? 0.5 * orElse(*gear.mean_diameter_mm, 0.0) : 0.0;
    size.width_known = positive(gear.face_width_mm);
    double b = size.width_known ? gear.face_width_mm : 0.0;
    if (!positive(size.outer_mm) && positive(mean)) {
        if (!size.width_known)
            b = 0.28 * mean / s;
        size.outer_mm = mean + 0.5 * b * s;
    }
    size.cone_distance_mm = size.outer_mm / s;
    if (!size.width_known)
        b = 0.28 * size.cone_distance_mm;
    size.width_mm = std::min(b, 0.6 * size.cone_distance_mm);
    size.module_mm = positive(gear.outer_module_mm) ? gear.outer_module_mm : 2.0 * size.outer_mm / std::max(gear.teeth, 25);
    return size;
}

WormSize sizeOf(const Worm& worm)
{
    WormSize size;
    size.pitch_mm = 0.5 * orElse(worm.reference_diameter_mm, orElse(worm.axial_module_mm, 0.0) * 10.0);
    size.module_mm = orElse(worm.axial_module_mm, 0.2 * size.pitch_mm);
    size.tip_mm = size.pitch_mm + size.module_mm;
    size.root_mm = std::max(size.pitch_mm - 1.25 * size.module_mm, 0.3 * size.pitch_mm);
    size.lead_rad = worm.lead_angle_deg && std::isfinite(*worm.lead_angle_deg)
                        ? std::clamp(*worm.lead_angle_deg, 0.0, 60.0) * pi / 180.0
                        : std::atan2(std::max(worm.starts, 1) * size.module_mm, std::max(2.0 * size.pitch_mm, 1e-9));
    size.width_known = positive(worm.face_width_mm);
    size.length_mm = size.width_known ? worm.face_width_mm : 12.0 * size.module_mm;
    return size;
}

WormWheelSize sizeOf(const WormWheel& wheel)
{
    WormWheelSize size;
    size.pitch_mm = 0.5 * orElse(wheel.reference_diameter_mm, 0.0);
    size.module_mm = wheel.teeth > 0 ? 2.0 * size.pitch_mm / wheel.teeth : 0.05 * size.pitch_mm;
    // The worm is not given here: its diameter quotient from the lead angle and the next whole number of starts at q = 10.
    const double lead = std::clamp(std::isfinite(wheel.lead_angle_deg) ? wheel.lead_angle_deg : 0.0, 0.0, 45.0) * pi / 180.0;
    const double starts = std::max(1.0, std::round(10.0 * std::tan(lead)));
    const double q = lead > 0.02 ? std::clamp(starts / std::tan(lead), 7.0, 18.0) : 10.0;
    size.worm_pitch_mm = 0.5 * q * size.module_mm;
    size.width_known = positive(wheel.face_width_mm);
    size.width_mm = size.width_known ? wheel.face_width_mm : 1.4 * size.worm_pitch_mm;
    // Outside diameter about one module above the throat (common practice), not beyond the worm's axis side.
    size.outer_mm = size.pitch_mm + 1.5 * size.module_mm;
    return size;
}

SprocketSize sizeOf(const ChainSprocket& sprocket)
{
    SprocketSize size;
    const double p = orElse(sprocket.pitch_mm, 0.0);
    const int z = std::max(sprocket.teeth, 5);
    size.pitch_mm = 0.5 * p / std::sin(pi / z);
    size.root_mm = size.pitch_mm - 0.31 * p; // roller about 0.62 p
    size.tip_mm = size.pitch_mm + 0.275 * p;
    // Inner width of ISO 606 chains about 0.61 p; tooth 0.93 (p up to 12.7) or 0.95 of it.
    size.tooth_width_mm = 0.61 * p * (p <= 12.7 ? 0.93 : 0.95);
    size.strand_pitch_mm = p < 22.0 ? 1.06 * p : 1.2 * p;
    const int strands = std::clamp(sprocket.strands, 1, 6);
    const double least = (strands - 1) * size.strand_pitch_mm + size.tooth_width_mm;
    if (strands == 1 && positive(sprocket.face_width_mm) && sprocket.face_width_mm < 1.2 * p)
        size.tooth_width_mm = sprocket.face_width_mm;
    size.width_mm = positive(sprocket.face_width_mm) ? std::max(sprocket.face_width_mm, strands > 1 ? least : 0.0) : least;
    return size;
}

PulleySize sizeOf(const BeltPulley& pulley)
{
    PulleySize size;
    const double r = 0.5 * orElse(pulley.diameter_mm, 0.0);
    size.pitch_mm = r;
    size.width_known = positive(pulley.face_width_mm);
    size.width_mm = size.width_known ? pulley.face_width_mm : std::max(0.3 * r, 16.0);
    switch (pulley.kind) {
    case BeltKind::v: {
        const VProfile& profile = vProfileOf(pulley);
        size.outer_mm = r + profile.above;
        size.root_mm = std::max(r - profile.below, 0.4 * r);
        if (!size.width_known)
            size.width_mm = (std::clamp(pulley.grooves, 1, 40) - 1) * profile.pitch + 2.0 * profile.edge;
        break;
    }
    case BeltKind::flat:
        size.outer_mm = r;
        size.root_mm = r;
        break;
    case BeltKind::ribbed:
        size.outer_mm = r;
        size.root_mm = std::max(r - 0.6 * std::min(size.width_mm / std::max(pulley.grooves, 3), 4.7), 0.5 * r);
        break;
    case BeltKind::toothed: {
        // Pitch line outside the tip by the pitch line offset; about 0.7 mm and tooth depth 2.1 mm at 5 to 8 mm pitch.
        const double depth = std::clamp(0.03 * r, 1.3, 3.4);
        size.outer_mm = r - std::min(0.03 * r, 0.7);
        size.root_mm = size.outer_mm - depth;
        break;
    }
    }
    return size;
}

double partOuterRadius_mm(const Part& part)
{
    struct Visitor {
        double operator()(const CylindricalGear& gear) const
        {
            const GearSize size = sizeOf(gear);
            return gear.internal ? size.root_mm + 3.2 * size.module_mm : size.tip_mm;
        }
        double operator()(const BevelGear& gear) const
        {
            const BevelSize size = sizeOf(gear);
            return size.outer_mm + size.module_mm * std::cos(size.cone_rad);
        }
        double operator()(const Worm& worm) const { return sizeOf(worm).tip_mm; }
        double operator()(const WormWheel& wheel) const { return sizeOf(wheel).outer_mm; }
        double operator()(const BeltPulley& pulley) const
        {
            const PulleySize size = sizeOf(pulley);
            // Flanges of toothed belts stand above the belt.
            return pulley.kind == BeltKind::toothed ? size.pitch_mm + 2.0 * (size.outer_mm - size.root_mm) : size.outer_mm;
        }
        double operator()(const ChainSprocket& sprocket) const { return sizeOf(sprocket).tip_mm; }
        double operator()(const Coupling& coupling) const { return 0.5 * orElse(coupling.outer_mm, 0.0); }
        double operator()(const Impeller& impeller) const { return 0.5 * orElse(impeller.outer_mm, 0.0); }
        double operator()(const WeightBody& body) const { return 0.5 * orElse(body.outer_mm, 0.0); }
        double operator()(const PointLoad&) const { return 0.0; }
        double operator()(const DistributedLoad&) const { return 0.0; }
    };
    const double radius = std::visit(Visitor{}, part.body);
    return positive(radius) ? radius : 0.0;
}

double partHalfLength_mm(const Part& part)
{
    struct Visitor {
        double operator()(const CylindricalGear& gear) const { return 0.5 * sizeOf(gear).width_mm; }
        double operator()(const BevelGear& gear) const
        {
            const BevelSize size = sizeOf(gear);
            return 0.5 * size.width_mm * std::cos(size.cone_rad) + size.module_mm * (std::sin(size.cone_rad) + 2.0);
        }
        double operator()(const Worm& worm) const { return 0.5 * sizeOf(worm).length_mm; }
        double operator()(const WormWheel& wheel) const { return 0.5 * sizeOf(wheel).width_mm; }
        double operator()(const BeltPulley& pulley) const { return 0.5 * sizeOf(pulley).width_mm; }
        double operator()(const ChainSprocket& sprocket) const { return 0.5 * sizeOf(sprocket).width_mm; }
        double operator()(const Coupling& coupling) const
        {
            return 0.5 * orElse(coupling.length_mm, 0.8 * orElse(coupling.outer_mm, 0.0));
        }
        double operator()(const Impeller& impeller) const
        {
            return 0.5 * orElse(impeller.width_mm, 0.25 * orElse(impeller.outer_mm, 0.0));
        }
        double operator()(const WeightBody& body) const { return 0.5 * orElse(body.width_mm, 0.2 * orElse(body.outer_mm, 0.0)); }
        double operator()(const PointLoad&) const { return 0.0; }
        double operator()(const DistributedLoad&) const { return 0.0; }
    };
    const double half = std::visit(Visitor{}, part.body);
    return positive(half) ? half : 0.0;
}

} // namespace shaftwright::drawing
