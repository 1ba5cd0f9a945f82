#include "core/analysis/arrangement_findings.h"

#include "core/analysis/add_finding.h"
#include "core/analysis/ring_findings.h"
#include "core/analysis/warmth_findings.h"
#include "core/bearings/rating.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

class Observer
{
public:
    Observer(const Arrangement& arrangement, Assessment& assessment) : m_arrangement(arrangement), m_assessment(assessment) {}

    void run()
    {
        compareSupports();
        lookAtAxialWork();
        lookAtSeats();
        lookAtMounting();
        lookForOverlaps();
        sayWhatIsMissing();
    }

private:
    const Arrangement& m_arrangement;
    Assessment& m_assessment;

    Finding& add(Severity severity, const char* code, std::string subject, std::string path, NamedValues values,
                 const char* source, const char* variant = "")
    {
        return addFinding(m_assessment, severity, code, std::move(subject), std::move(path), std::move(values), source, variant);
    }

    static std::string pathOf(const SupportAssessment& support, const char* input)
    {
        return "supports." + support.id.value + "." + input;
    }

    /// A thrust bearing holds nothing across the shaft, whatever its role.
    [[nodiscard]] bool holdsAcross(std::size_t s) const
    {
        const auto& bearing = m_arrangement.supports[s].bearing;
        return m_assessment.supports[s].role != Role::axial_only && !(bearing && !carriesRadial(bearing->family));
    }

    void compareSupports()
    {
        auto& supports = m_assessment.supports;
        double largest_N = 0.0;
        for (const SupportAssessment& support : supports) {
            for (const SupportCase& here : support.cases)
                largest_N = std::max(largest_N, here.radial_N);
        }
        int radial = 0;
        for (std::size_t s = 0; s < supports.size(); ++s) {
            const SupportAssessment& support = supports[s];
            if (holdsAcross(s))
                ++radial;
            if (support.cases.empty() || !holdsAcross(s) || largest_N == 0.0)
                continue;
            double own_N = 0.0;
            for (const SupportCase& here : support.cases)
                own_N = std::max(own_N, here.radial_N);
            if (own_N < 0.02 * largest_N)
                add(Severity::note, "support-idle", support.id.value, pathOf(support, "x_mm"),
                    {{"support", support.name}, {"Fr_N", own_N}, {"largest_N", largest_N}}, "common practice");
            lookForReversal(support);
            lookForUplift(support);
        }
        if (radial >= 3)
            lookAtSeatHeights();
    }

    void lookForReversal(const SupportAssessment& support)
    {
        for (std::size_t a = 0; a < support.cases.size(); ++a) {
            for (std::size_t b = a + 1; b < support.cases.size(); ++b) {
                const SupportCase& first = support.cases[a];
                const SupportCase& second = support.cases[b];
                if (std::min(first.radial_N, second.radial_N) < 0.05 * std::max(first.radial_N, second.radial_N) ||
                    first.radial_N == 0.0)
                    continue;
                const double turn_deg = std::abs(std::remainder(first.radial_angle_deg - second.radial_angle_deg, 360.0));
                if (turn_deg <= 90.0)
                    continue;
                add(Severity::note, "reaction-reversal", support.id.value, pathOf(support, "x_mm"),
                    {{"support", support.name},
                     {"angle1_deg", first.radial_angle_deg},
                     {"angle2_deg", second.radial_angle_deg},
                     {"case1", m_assessment.load_cases[a].name},
                     {"case2", m_assessment.load_cases[b].name}},
                    "handbooks on fits: load direction relative to the ring");
                return;
            }
        }
    }

    /// Horizontal shaft whose support is pulled up: cap and bolts carry, not the base.
    void lookForUplift(const SupportAssessment& support)
    {
        if (std::abs(m_assessment.settled.attitude_deg) > 45.0)
            return;
        for (std::size_t i = 0; i < support.cases.size(); ++i) {
            const SupportCase& here = support.cases[i];
            // The support pushes the shaft down: the shaft pulls the housing up.
            if (here.force_N.z < 0.0 && -here.force_N.z > 0.5 * here.radial_N && here.radial_N > 0.0) {
                Finding& finding = add(
                    Severity::note, "uplift", support.id.value, pathOf(support, "x_mm"),
                    {{"support", support.name}, {"Fr_N", -here.force_N.z}, {"case", m_assessment.load_cases[i].name}}, "statics");
                finding.case_id = here.case_id.value;
                return;
            }
        }
    }

    /// Effect of a seat of an inner support standing 0.02 mm out of line.
    void lookAtSeatHeights()
    {
        if (!m_assessment.beam.usable())
            return;
        constexpr double error_mm = 0.02;
        std::vector<std::size_t> order;
        for (std::size_t s = 0; s < m_assessment.supports.size(); ++s) {
            if (holdsAcross(s))
                order.push_back(s);
        }
        std::sort(order.begin(), order.end(),
                  [&](std::size_t a, std::size_t b) { return m_assessment.supports[a].x_mm < m_assessment.supports[b].x_mm; });
        double worst_N = 0.0;
        std::size_t worst = order[1];
        for (std::size_t k = 1; k + 1 < order.size(); ++k) {
            const std::size_t s = order[k];
            beam::Model model = m_assessment.beam.model;
            for (beam::Support& support : model.supports)
                support.prescribed = {};
            model.supports[s].prescribed[1] = error_mm;
            const std::array<beam::LoadCase, 1> nothing{};
            const beam::Solution moved = beam::solve(model, nothing);
            if (!moved.usable())
                continue;
            const double force_N = std::abs(moved.cases[0].reactions[s].force_N[1]);
            if (force_N > worst_N) {
                worst_N = force_N;
                worst = s;
            }
        }
        const SupportAssessment& support = m_assessment.supports[worst];
        add(Severity::caution, "three-supports", support.id.value, pathOf(support, "x_mm"),
            {{"count", double(order.size())}, {"support", support.name}, {"dF_N", worst_N}, {"error_mm", error_mm}},
            "indeterminate shaft: reactions depend on the seat heights");
    }

    void lookAtAxialWork()
    {
        const bool any_axial = std::any_of(m_assessment.load_cases.begin(), m_assessment.load_cases.end(),
                                           [](const CaseSummary& summary) { return summary.K_N != 0.0; });
        for (const SupportAssessment& support : m_assessment.supports) {
            if (support.role == Role::locating && !any_axial && !support.cases.empty())
                add(Severity::note, "axial-location-unloaded", support.id.value, pathOf(support, "role"),
                    {{"support", support.name}}, "statics");
        }
        lookForTurnedThrust();
        lookAtDoubleHelical();
        bool any_load = false;
        for (const CaseLoads& loads : m_assessment.loads) {
            for (const PartLoad& load : loads.parts)
                any_load = any_load || load.distributed || load.force_N != Vector3{} || load.moment_Nmm != Vector3{} ||
                           load.rotating_force_N != Vector3{};
        }
        if (!any_load)
            add(Severity::note, "duty-no-load", "", "parts", {}, "");
    }

    /// Helical, bevel and worm teeth turn their thrust with the sense of rotation.
    void lookForTurnedThrust()
    {
        bool forward = false;
        bool backward = false;
        for (const CaseSummary& summary : m_assessment.load_cases) {
            forward = forward || summary.speed_rpm > 0.0;
            backward = backward || summary.speed_rpm < 0.0;
        }
        if (!(forward && backward))
            return;
        for (const Part& part : m_arrangement.parts) {
            double highest_N = 0.0;
            double lowest_N = 0.0;
            for (const CaseLoads& loads : m_assessment.loads) {
                for (const PartLoad& load : loads.parts) {
                    if (load.part == part.id && part.body.index() <= 3) {
                        highest_N = std::max(highest_N, load.axial_N);
                        lowest_N = std::min(lowest_N, load.axial_N);
                    }
                }
            }
            if (highest_N > 0.0 && lowest_N < 0.0)
                add(Severity::note, "rotation-reversal-axial", part.id.value, "parts." + part.id.value + ".hand",
                    {{"part", part.name.empty() ? part.id.value : part.name}, {"Fa1_N", highest_N}, {"Fa2_N", lowest_N}},
                    "geometry of the teeth", "both_senses");
        }
    }

    /// The teeth of a double-helical pair set the place of one of its two shafts; the mate's shaft is not known here.
    void lookAtDoubleHelical()
    {
        const auto locating =
            std::find_if(m_assessment.supports.begin(), m_assessment.supports.end(), [](const SupportAssessment& support) {
                return support.role == Role::locating || support.role == Role::adjusted;
            });
        if (locating == m_assessment.supports.end())
            return;
        for (const Part& part : m_arrangement.parts) {
            const auto* gear = std::get_if<CylindricalGear>(&part.body);
            if (gear == nullptr || !gear->double_helical)
                continue;
            add(Severity::note, "herringbone-double-located", locating->id.value, pathOf(*locating, "role"),
                {{"part", part.name.empty() ? part.id.value : part.name}, {"support", locating->name}}, "common practice",
                "mate_unknown");
        }
    }

    void lookAtSeats()
    {
        for (std::size_t s = 0; s < m_assessment.supports.size(); ++s) {
            const SupportAssessment& support = m_assessment.supports[s];
            const Support& given = m_arrangement.supports[s];
            if (!given.bearing || given.bearing->rows.empty() || !(support.seat_mm > 0.0))
                continue;
            const CatalogueRow& row = given.bearing->rows.front().row;
            const bool on_shaft =
                given.bearing->family == Family::needle_roller_no_inner || given.bearing->family == Family::needle_drawn_cup;
            const double needed_mm = on_shaft && row.inner_raceway_mm > 0.0 ? row.inner_raceway_mm : row.bore_mm;
            if (std::abs(needed_mm - support.seat_mm) > 0.02)
                add(Severity::stop, "seat-bore-differs", support.id.value, pathOf(support, "bearing"),
                    {{"support", support.name},
                     {"bearing", given.bearing->designation()},
                     {"bore_mm", needed_mm},
                     {"seat_mm", support.seat_mm}},
                    "the bore is the diameter of the seat");
            lookForFillets(support, given);
        }
    }

    /// A shaft fillet larger than the ring's chamfer keeps the ring from sitting against its shoulder.
    void lookForFillets(const SupportAssessment& support, const Support& given)
    {
        const CatalogueRow& row = given.bearing->rows.front().row;
        if (!(row.chamfer_mm > 0.0))
            return;
        const double half_mm = 0.5 * given.bearing->width_mm();
        double start_mm = 0.0;
        for (const Segment& segment : m_arrangement.shaft.segments) {
            for (const Feature& feature : segment.features) {
                if (feature.kind != FeatureKind::fillet || feature.length_mm <= row.chamfer_mm)
                    continue;
                const double x_mm = start_mm + feature.position_mm;
                if (std::abs(std::abs(x_mm - given.x_mm) - half_mm) < 1.0)
                    add(Severity::stop, "fillet-too-large", support.id.value,
                        "shaft.segments." + segment.id.value + ".features." + feature.id.value,
                        {{"support", support.name}, {"fillet_mm", feature.length_mm}, {"chamfer_mm", row.chamfer_mm}},
                        "the ring chamfer must clear the fillet (ISO 582)");
            }
            start_mm += segment.length_mm;
        }
    }

    /// Can the ring be slid onto its seat from one end of the shaft?
    void lookAtMounting()
    {
        const Shaft& shaft = m_arrangement.shaft;
        for (std::size_t s = 0; s < m_assessment.supports.size(); ++s) {
            const SupportAssessment& support = m_assessment.supports[s];
            if (!(support.seat_mm > 0.0))
                continue;
            double start_mm = 0.0;
            double left_mm = 0.0;
            double right_mm = 0.0;
            for (const Segment& segment : shaft.segments) {
                const double largest = std::max(segment.outer_mm, segment.outerRight_mm());
                const double end_mm = start_mm + segment.length_mm;
                if (end_mm <= support.x_mm + 1e-6)
                    left_mm = std::max(left_mm, largest);
                if (start_mm >= support.x_mm - 1e-6)
                    right_mm = std::max(right_mm, largest);
                start_mm = end_mm;
            }
            const double obstacle_mm = std::min(left_mm, right_mm);
            if (obstacle_mm > support.seat_mm + 1e-6)
                add(Severity::stop, "assembly-order", support.id.value, pathOf(support, "x_mm"),
                    {{"support", support.name}, {"seat_mm", support.seat_mm}, {"obstacle_mm", obstacle_mm}}, "geometry");
        }
    }

    /// Length of a part's body along the shaft, about its x; 0: no body.
    static double bodyLength_mm(const Part& part)
    {
        struct Length {
            double operator()(const CylindricalGear& gear) const { return gear.face_width_mm; }
            double operator()(const BevelGear&) const { return 0.0; } // its cone reaches over its neighbours
            double operator()(const Worm& worm) const { return worm.face_width_mm; }
            double operator()(const WormWheel& wheel) const { return wheel.face_width_mm; }
            double operator()(const BeltPulley& pulley) const { return pulley.face_width_mm; }
            double operator()(const ChainSprocket& sprocket) const { return sprocket.face_width_mm; }
            double operator()(const Coupling& coupling) const { return coupling.length_mm; }
            double operator()(const Impeller& impeller) const { return impeller.width_mm; }
            double operator()(const WeightBody& weight) const { return weight.width_mm; }
            double operator()(const PointLoad&) const { return 0.0; }
            double operator()(const DistributedLoad&) const { return 0.0; }
        };
        return std::visit(Length{}, part.body);
    }

    /// Two bodies cannot stand in the same place on the shaft.
    void lookForOverlaps()
    {
        struct Body {
            std::string id, name, path;
            double x_mm, length_mm;
        };
        std::vector<Body> bodies;
        for (const Part& part : m_arrangement.parts) {
            if (const double length_mm = bodyLength_mm(part); length_mm > 0.0 && std::isfinite(part.x_mm))
                bodies.push_back({part.id.value, part.name.empty() ? part.id.value : part.name, "parts." + part.id.value + ".x_mm", part.x_mm, length_mm});
        }
        const std::size_t parts = bodies.size();
        for (std::size_t s = 0; s < m_arrangement.supports.size(); ++s) {
            const Support& support = m_arrangement.supports[s];
            if (support.bearing && !support.bearing->rows.empty() && std::isfinite(support.x_mm))
                bodies.push_back({support.id.value, m_assessment.supports[s].name, "supports." + support.id.value + ".x_mm", support.x_mm,
                                  support.bearing->width_mm()});
        }
        for (std::size_t a = 0; a < parts; ++a) {
            for (std::size_t b = a + 1; b < bodies.size(); ++b) {
                const double overlap_mm = 0.5 * (bodies[a].length_mm + bodies[b].length_mm) - std::abs(bodies[a].x_mm - bodies[b].x_mm);
                if (overlap_mm > 0.01)
                    add(Severity::caution, "parts-overlap", bodies[a].id, bodies[a].path,
                        {{"a", bodies[a].name}, {"b", bodies[b].name}, {"overlap_mm", overlap_mm}}, "geometry");
            }
        }
    }

    void sayWhatIsMissing()
    {
        for (std::size_t s = 0; s < m_arrangement.supports.size(); ++s) {
            const Support& support = m_arrangement.supports[s];
            // A requirement there already says it as a stop.
            const bool told = std::any_of(m_assessment.findings.begin(), m_assessment.findings.end(), [&](const Finding& finding) {
                return finding.variant == "no_bearing" && finding.subject == support.id.value;
            });
            if (!told && (!support.bearing || support.bearing->rows.empty()))
                add(Severity::caution, "support-without-bearing", support.id.value, "supports." + support.id.value + ".bearing",
                    {{"support", m_assessment.supports[s].name}}, "");
        }
        bool generic = false;
        bool any_bearing = false;
        for (const Support& support : m_arrangement.supports) {
            if (!support.bearing)
                continue;
            any_bearing = true;
            for (const SetRow& set_row : support.bearing->rows)
                generic = generic || set_row.row.catalogue == "generic";
        }
        if (any_bearing)
            add(Severity::note, "modified-life-missing", "", "supports", {}, "ISO 281:2007, 9");
        if (generic)
            add(Severity::note, "generic-rating", "", "supports", {}, "ISO 281, ISO 76 with a generic internal geometry");
        if (!m_arrangement.duty.required_L_h && std::none_of(m_arrangement.supports.begin(), m_arrangement.supports.end(),
                                                             [](const Support& support) { return support.required_L_h; }))
            add(Severity::note, "default-used", "", "duty.required_L_h", {}, "", "required_life");
        if (m_assessment.settled.motion == Motion::oscillation && any_bearing)
            add(Severity::note, "not-assessed", "", "surroundings.motion", {}, "", "oscillation");
        for (const char* subject : {"strength", "fatigue", "critical_speed"})
            add(Severity::note, "not-assessed", "", "shaft", {}, "", subject);
    }
};

} // namespace

void appendArrangementFindings(const Arrangement& arrangement, Assessment& assessment)
{
    Observer(arrangement, assessment).run();
    appendRingFindings(arrangement, assessment);
    appendWarmthFindings(arrangement, assessment);
}

bool acceptedIn(const Arrangement& arrangement, const Finding& finding)
{
    if (finding.severity == Severity::stop)
        return false;
    for (const Acceptance& acceptance : arrangement.acceptances) {
        if (acceptance.code != finding.code || acceptance.path != finding.path)
            continue;
        const bool moved = std::any_of(acceptance.values.begin(), acceptance.values.end(), [&](const auto& entry) {
            const TextValue* now = finding.values.find(entry.first);
            const double* number = now != nullptr ? std::get_if<double>(now) : nullptr;
            return number == nullptr || std::abs(*number - entry.second) > 0.01 * std::abs(entry.second);
        });
        if (!moved)
            return true;
    }
    return false;
}

} // namespace shaftwright::analysis
