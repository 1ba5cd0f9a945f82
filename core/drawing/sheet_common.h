#pragma once
// Inner helpers of the sheet's builders: boxes of labels, arrows, places of things, numbers as drawn. Not part of the contract.

#include "core/drawing/labels.h"
#include "core/drawing/sheet.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shaftwright::drawing::inner
{

struct Box {
    double x0 = 0.0, y0 = 0.0, x1 = 0.0, y1 = 0.0;
    [[nodiscard]] bool overlaps(const Box& other, double margin_x = 0.0, double margin_y = 0.0) const
    {
        return x0 - margin_x < other.x1 && other.x0 - margin_x < x1 && y0 - margin_y < other.y1 && other.y0 - margin_y < y1;
    }
};

/// Places of labels that are taken already; a label goes to the first free candidate.
class Placer
{
public:
    /// Boxes are those of capitals; below the base line hang the tails of letters.
    static constexpr double tails_mm = 0.7;

    /// `soft`: a thin line that a label on paper ground may interrupt when no other place is left.
    void take(const Box& box, bool soft = false) { (soft ? m_soft : m_taken).push_back(box); }
    [[nodiscard]] bool isFree(const Box& box, double margin_mm = 0.3, bool through_soft = false) const
    {
        const auto hits = [&](const Box& other) { return box.overlaps(other, margin_mm, tails_mm); };
        return std::none_of(m_taken.begin(), m_taken.end(), hits) &&
               (through_soft || std::none_of(m_soft.begin(), m_soft.end(), hits));
    }

private:
    std::vector<Box> m_taken, m_soft;
};

/// Box of a text at angle 0 or 90.
[[nodiscard]] Box boxOf(const Text& text);

void line(Group& group, double x0, double y0, double x1, double y1, Stroke stroke, Ink ink);
void rectangle(Group& group, const Box& box, Stroke stroke, Ink ink, std::optional<Ink> fill = {});
/// Rectangle with rounded corners.
void roundRectangle(Group& group, const Box& box, double radius_mm, Stroke stroke, Ink ink, std::optional<Ink> fill = {});
/// Line from tail to tip with a filled head at the tip; `heads` 2 for moment vectors.
void arrow(Group& group, double tail_x, double tail_y, double tip_x, double tip_y, Ink ink, Stroke stroke = Stroke::thick,
           int heads = 1);
/// Filled head with its tip at (x, y), pointing along the unit vector (dx, dy).
void head(Group& group, double x, double y, double dx, double dy, double length_mm, double half_width_mm, Ink ink);
/// Circular arc from angle a0 to a1 (degrees, counter-clockwise when a1 > a0).
void arc(Group& group, double x, double y, double radius, double a0_deg, double a1_deg, Stroke stroke, Ink ink);
/// Verdict marks as strokes, so that no font is needed: 0 met, 1 caution, 2 stop. Size: height of capitals.
void verdictMark(Group& group, double x, double y, double height_mm, int verdict);

/// "13 700", three significant figures, true minus.
[[nodiscard]] std::string number3(double value);
/// Shortest text with at most `decimals` decimals, no trailing zeros, true minus.
[[nodiscard]] std::string numberTrimmed(double value, int decimals);
/// Forces of one picture share a unit by the largest of them.
struct Unit {
    double factor = 1.0;
    std::string_view name;
};
[[nodiscard]] Unit forceUnit(double largest_N);
[[nodiscard]] Unit momentUnit(double largest_Nmm);
/// Name of the case to which arrows belong while all cases are shown; empty with one case or when a case was chosen.
[[nodiscard]] std::string shownCaseName(const Assessment& assessment, const SheetView& view);
[[nodiscard]] std::string withUnit(double value, const Unit& unit);
[[nodiscard]] std::string lifeText(double hours);

/// Cuts the middle out of a text that is wider than `width_mm`.
[[nodiscard]] std::string elide(std::string_view text, double width_mm, double height_mm, Font font);

[[nodiscard]] std::string partPath(const Part& part);
[[nodiscard]] std::string supportPath(const Support& support);
/// Largest outside diameter of the bearing, or of its space when none is chosen, mm.
[[nodiscard]] double supportOuter_mm(const Arrangement& arrangement, const Support& support);
[[nodiscard]] double supportWidth_mm(const Arrangement& arrangement, const Support& support);
/// Shaft diameter under a thing at x; the smaller one at a step. Off the shaft: that of the nearer end.
[[nodiscard]] double seatAt_mm(const Shaft& shaft, double x_mm);

/// Component of a force that the plane shows; resultant >= 0.
[[nodiscard]] double component(const Vector3& force, Plane plane);

/// Loads of the case that is drawn; nullptr when there are none.
[[nodiscard]] const CaseLoads* shownLoads(const Assessment& assessment, const SheetView& view);
[[nodiscard]] const SupportCase* shownReaction(const SupportAssessment& support, const Assessment& assessment,
                                               const SheetView& view);

/// Text of a diameter of one segment and where it stands.
struct DiameterLabel {
    std::size_t segment = 0;
    Text text;
    std::optional<Text> second; ///< the tolerance class under the number where one line has no room
    bool leader = false;
    double target_x = 0.0, target_y = 0.0; ///< foot of the leader on the outline
    double landing_x = 0.0;                ///< where the leader meets its shelf
    Box box;
};

/// Places that drawing, loads and dimensions agree on, sheet mm, origin left face on the axis.
struct Layout {
    double scale = 1.0;
    double length = 0.0; ///< of the shaft
    double largest_radius = 0.0;
    std::vector<double> part_radius, part_half; ///< per part
    std::vector<double> support_radius, support_half;
    double support_bottom = 0.0;    ///< lowest y of signs, reactions and their labels
    double left = 0.0, right = 0.0; ///< outermost x of parts, bearings, shaft
    double leader_y = 0.0;          ///< baseline of the row of leaders
    double chain_y = 0.0, segment_y = 0.0, overall_y = 0.0;
    bool all_segments = false; ///< every segment's length stands on segment_y, not only the selected one's
    std::vector<DiameterLabel> diameters;
    /// On the shaft itself: broken-out keyways and tooth traces, which no text may cross.
    std::vector<Box> busy;
};
[[nodiscard]] Layout layoutOf(const Arrangement& arrangement, const SheetView& view);

/// Up to so many loads every one has its full label and its own extension line.
inline constexpr std::size_t fewParts = 8;
/// Up to so many segments every length is dimensioned.
inline constexpr std::size_t fewSegments = 8;
/// Sizes, sheet mm.
inline constexpr double supportSign_mm = 7.0; ///< from the bearing's outline to the end of the ground strokes
inline constexpr double longestArrow_mm = 22.0, shortestArrow_mm = 7.0;
inline constexpr double labelsLeft_mm = 16.0;
inline constexpr double labelsRight_mm = 20.0; ///< labels of loads reach so far beyond the last thing
inline constexpr double arrowHead_mm = 3.2, arrowHeadHalf_mm = 0.75;

} // namespace shaftwright::drawing::inner
