#include "core/analysis/ring_findings.h"

#include "core/analysis/add_finding.h"
#include "core/bearings/rating.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

/// Least height of the shoulder by the chamfer of the ring; JIS B 1566 (from memory).
struct ShoulderHeight {
    double chamfer_mm, general_mm, light_axial_mm;
};
constexpr std::array<ShoulderHeight, 16> shoulderHeights = {{{0.15, 0.6, 0.6},
                                                             {0.2, 0.8, 0.8},
                                                             {0.3, 1.25, 1.0},
                                                             {0.6, 2.25, 2.0},
                                                             {1.0, 2.75, 2.5},
                                                             {1.1, 3.5, 3.25},
                                                             {1.5, 4.25, 4.0},
                                                             {2.0, 5.0, 4.5},
                                                             {2.1, 6.0, 5.5},
                                                             {2.5, 6.0, 5.5},
                                                             {3.0, 7.0, 6.5},
                                                             {4.0, 9.0, 8.0},
                                                             {5.0, 11.0, 10.0},
                                                             {6.0, 14.0, 12.0},
                                                             {7.5, 18.0, 16.0},
                                                             {9.5, 22.0, 20.0}}};

/// Families whose rings move against each other along the shaft: both rings are held on both sides.
bool movesInside(Family family)
{
    switch (family) {
    case Family::cylindrical_roller_NU:
    case Family::needle_roller:
    case Family::needle_roller_no_inner:
    case Family::needle_drawn_cup:
    case Family::toroidal_roller:
        return true;
    default:
        return false;
    }
}

bool hasInnerRing(Family family)
{
    return family != Family::needle_roller_no_inner && family != Family::needle_drawn_cup;
}

bool isRolling(Family family)
{
    return family < Family::plain_sintered || family > Family::linear_guide;
}

bool open(const std::optional<HoldKind>& hold)
{
    return hold == HoldKind::nothing;
}

bool held(const std::optional<HoldKind>& hold)
{
    return hold && *hold != HoldKind::nothing;
}

class RingJudge
{
public:
    RingJudge(const Arrangement& arrangement, Assessment& assessment, const Support& given, const SupportAssessment& support)
        : m_arrangement(arrangement), m_assessment(assessment), m_given(given), m_support(support),
          m_family(given.bearing->family)
    {
    }

    void run()
    {
        if (m_given.role == Role::non_locating)
            judgeFollowing();
        else
            judgeHolding();
        if (carriesRadial(m_family) && hasInnerRing(m_family)) {
            judgeShoulder("inner_left", m_given.holds.inner_left, -1.0);
            judgeShoulder("inner_right", m_given.holds.inner_right, 1.0);
        }
    }

private:
    const Arrangement& m_arrangement;
    Assessment& m_assessment;
    const Support& m_given;
    const SupportAssessment& m_support;
    Family m_family;

    [[nodiscard]] std::string pathOf(const char* side) const { return "supports." + m_support.id.value + ".holds." + side; }

    void missing(const char* side, const std::optional<HoldKind>& hold, const char* ring, const char* direction)
    {
        if (open(hold))
            addFinding(m_assessment, Severity::caution, "shoulder-missing", m_support.id.value, pathOf(side),
                       {{"support", m_support.name}, {"ring", std::string(ring)}, {"direction", std::string(direction)}},
                       "common practice", ring);
    }

    /// A force of the shaft to the right comes in at the left face of the inner ring and leaves at the right face of the outer
    /// one.
    void judgeHolding()
    {
        const Holds& holds = m_given.holds;
        const bool both = m_given.role == Role::locating || !m_support.carries;
        if (both || m_support.carries == Carries::plus) {
            if (hasInnerRing(m_family))
                missing("inner_left", holds.inner_left, "inner", "minus");
            missing("outer_right", holds.outer_right, "outer", "plus");
        }
        if (both || m_support.carries == Carries::minus) {
            if (hasInnerRing(m_family))
                missing("inner_right", holds.inner_right, "inner", "plus");
            missing("outer_left", holds.outer_left, "outer", "minus");
        }
    }

    void judgeFollowing()
    {
        const Holds& holds = m_given.holds;
        const bool outer_held = held(holds.outer_left) && held(holds.outer_right);
        if (movesInside(m_family)) {
            if (hasInnerRing(m_family)) {
                missing("inner_left", holds.inner_left, "inner", "minus");
                missing("inner_right", holds.inner_right, "inner", "plus");
            }
            missing("outer_left", holds.outer_left, "outer", "minus");
            missing("outer_right", holds.outer_right, "outer", "plus");
            return;
        }
        const bool inner_held = held(holds.inner_left) && held(holds.inner_right);
        if (inner_held && outer_held) {
            addFinding(m_assessment, Severity::stop, "non-locating-clamped", m_support.id.value, pathOf("outer_left"),
                       {{"support", m_support.name}, {"bearing", m_given.bearing->designation()}}, "common practice");
            return;
        }
        // One ring slides, the other one stays where it is.
        const bool inner_free = open(holds.inner_left) || open(holds.inner_right);
        const bool outer_free = open(holds.outer_left) || open(holds.outer_right);
        if (inner_free && outer_free) {
            missing("inner_left", holds.inner_left, "inner", "minus");
            missing("inner_right", holds.inner_right, "inner", "plus");
        }
    }

    void judgeShoulder(const char* side, const std::optional<HoldKind>& hold, double outward)
    {
        const CatalogueRow& row = m_given.bearing->rows.front().row;
        if (hold != HoldKind::shoulder || !(row.chamfer_mm > 0.0) || !(m_support.seat_mm > 0.0))
            return;
        // Beyond a fillet or an undercut the full diameter stands; a shoulder ends no later than where the next segment does.
        const double beyond_mm = m_given.x_mm + outward * (0.5 * m_given.bearing->width_mm() + 0.5);
        const double height_mm = 0.5 * (shaftDiameterAt_mm(m_arrangement.shaft, beyond_mm, false) - m_support.seat_mm);
        const NamedValues values = {{"support", m_support.name}, {"height_mm", height_mm}, {"seat_mm", m_support.seat_mm}};
        if (height_mm <= 0.0) {
            addFinding(m_assessment, Severity::caution, "shoulder-missing", m_support.id.value, pathOf(side), values, "geometry",
                       "none");
            return;
        }
        bool loaded = false;
        for (const SupportCase& here : m_support.cases)
            loaded = loaded || here.axial_N != 0.0;
        const auto entry = std::find_if(shoulderHeights.rbegin(), shoulderHeights.rend(), [&](const ShoulderHeight& candidate) {
            return candidate.chamfer_mm <= row.chamfer_mm + 1e-9;
        });
        if (entry == shoulderHeights.rend())
            return;
        const double needed_mm = loaded ? entry->general_mm : entry->light_axial_mm;
        if (height_mm < needed_mm - 1e-9) {
            Finding& finding = addFinding(m_assessment, Severity::caution, "shoulder-low", m_support.id.value, pathOf(side),
                                          values, "JIS B 1566, mounting dimensions (from memory)");
            finding.values.set("needed_mm", needed_mm);
            finding.values.set("chamfer_mm", row.chamfer_mm);
        }
    }
};

} // namespace

void appendRingFindings(const Arrangement& arrangement, Assessment& assessment)
{
    for (std::size_t s = 0; s < assessment.supports.size(); ++s) {
        const Support& given = arrangement.supports[s];
        if (given.bearing && !given.bearing->rows.empty() && isRolling(given.bearing->family))
            RingJudge(arrangement, assessment, given, assessment.supports[s]).run();
    }
}

} // namespace shaftwright::analysis
