// The shaft as a view: not sectioned lengthwise (ISO 128-3, from memory). Broken-out section where a keyway must be seen,
// upper half cut where it is bored.

#include "core/drawing/section_builder.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <string_view>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;

bool positive(double value)
{
    return std::isfinite(value) && value > 0.0;
}

/// Undercut DIN 509: radius, depth t1, width f of a row for usual stress, by diameter (reprint of the 1998 edition).
struct Undercut {
    double up_to_mm, r, t1, f;
};
constexpr std::array<Undercut, 4> undercuts{
    {{3.0, 0.2, 0.1, 1.0}, {18.0, 0.4, 0.2, 2.0}, {80.0, 0.8, 0.3, 2.5}, {1e9, 1.2, 0.4, 4.0}}};

/// Key height h by its width b, DIN 6885-1.
double keyHeight_mm(double width, double depth)
{
    struct Key {
        double b, h;
    };
    static constexpr std::array<Key, 20> keys{{{2, 2},   {3, 3},   {4, 4},   {5, 5},   {6, 6},   {8, 7},   {10, 8},
                                               {12, 8},  {14, 9},  {16, 10}, {18, 11}, {20, 12}, {22, 14}, {25, 14},
                                               {28, 16}, {32, 18}, {36, 20}, {40, 22}, {45, 25}, {50, 28}}};
    for (const Key& key : keys) {
        if (std::abs(key.b - width) < 1e-6)
            return key.h;
    }
    return depth / 0.6; // about six tenths of a key sit in the shaft
}

/// Number that belongs to an id: the freehand line may not change from frame to frame.
struct Random {
    std::uint32_t state;
    explicit Random(std::string_view id) : state(2166136261u)
    {
        for (const char c : id)
            state = (state ^ static_cast<unsigned char>(c)) * 16777619u;
    }
    double next() // 0 to 1
    {
        state = state * 1664525u + 1013904223u;
        return static_cast<double>(state >> 8) / 16777216.0;
    }
};

/// Freehand line through the points: Catmull-Rom.
Contour spline(const std::vector<Point>& points)
{
    constexpr int pieces = 4;
    Contour line;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Point& a = points[i == 0 ? 0 : i - 1];
        const Point& b = points[i];
        const Point& c = points[i + 1];
        const Point& d = points[std::min(i + 2, points.size() - 1)];
        for (int k = 0; k < pieces; ++k) {
            const double t = static_cast<double>(k) / pieces, t2 = t * t, t3 = t2 * t;
            const auto blend = [&](double p0, double p1, double p2, double p3) {
                return 0.5 * (2.0 * p1 + (p2 - p0) * t + (2.0 * p0 - 5.0 * p1 + 4.0 * p2 - p3) * t2 +
                              (3.0 * p1 - p0 - 3.0 * p2 + p3) * t3);
            };
            line.push_back({blend(a.x, b.x, c.x, d.x), blend(a.y, b.y, c.y, d.y), 0.0});
        }
    }
    line.push_back({points.back().x, points.back().y, 0.0});
    return line;
}

/// What is known of one segment while it is drawn; x from its left end.
struct Span {
    const Segment& segment;
    double length, r0, r1; ///< radii left and right
    double before, after;  ///< radii of the neighbours at the joints; 0: shaft end
    bool last;             ///< nothing stands to its right
    [[nodiscard]] double radiusAt(double x) const { return r0 + (r1 - r0) * std::clamp(x / length, 0.0, 1.0); }
};

struct Notch {
    double from, to, depth;
};

struct Corner {
    double fillet = 0.0, chamfer_x = 0.0, chamfer_r = 0.0; ///< radius of a fillet; legs of a chamfer
    bool undercut = false;
    double under_r = 0.0, under_t = 0.0, under_f = 0.0;
};

class ShaftDrawer
{
public:
    ShaftDrawer(const Shaft& shaft, const SectionStyle& style) : shaft_(shaft), style_(style) {}

    std::vector<Group> draw()
    {
        std::vector<Group> keys;
        double x = 0.0;
        const std::size_t count = shaft_.segments.size();
        groups_.reserve(count + 2);
        for (std::size_t i = 0; i < count; ++i) {
            const Segment& segment = shaft_.segments[i];
            if (!positive(segment.length_mm))
                continue;
            const double outer = std::isfinite(segment.outer_mm) ? std::max(0.5 * segment.outer_mm, 0.0) : 0.0;
            const double outerRight = std::isfinite(segment.outerRight_mm()) ? std::max(0.5 * segment.outerRight_mm(), 0.0) : 0.0;
            const Span span{segment,    segment.length_mm, outer, outerRight, neighbourRadius(i, -1), neighbourRadius(i, 1),
                            !hasNext(i)};
            SectionBuilder builder(style_);
            builder.place(x, false);
            drawSegment(builder, span);
            Group group = builder.take(Layer::shaft);
            group.subject = "shaft.segments." + segment.id.value;
            groups_.push_back(std::move(group));
            if (style_.detail >= Detail::detailed_sign)
                drawKeys(keys, span, x);
            x += segment.length_mm;
        }
        for (Group& key : keys)
            groups_.push_back(std::move(key));
        return std::move(groups_);
    }

private:
    /// One side of a joint: radius of the cylinder, of its face (less chamfer or rounding), of its bore.
    struct Side {
        double radius = 0.0, face = 0.0, bore = 0.0;
    };
    static std::string_view segment_id(const Span& span) { return span.segment.id.value; }
    static bool cut(const Span& span, double bore0, double bore1)
    {
        return (bore0 > 0.0 || bore1 > 0.0) && bore0 < span.r0 && bore1 < span.r1;
    }
    static Side sideOf(const Span& span, const Corner& corner, bool right)
    {
        const Segment& segment = span.segment;
        Side side;
        side.radius = right ? span.r1 : span.r0;
        side.face = side.radius;
        const double other = right ? span.after : span.before;
        if (corner.chamfer_x > 0.0)
            side.face -= corner.chamfer_r;
        else if (corner.fillet > 0.0 && other < side.radius)
            side.face -= corner.fillet;
        const double b0 = 0.5 * segment.boreLeft_mm(), b1 = 0.5 * segment.boreRight_mm();
        if (cut(span, b0, b1))
            side.bore = right ? b1 : b0;
        return side;
    }

    /// Face between two sides (or the end of the shaft): the step's edge over its whole height; where the upper half is cut,
    /// no line runs through the material.
    void joint(SectionBuilder& builder, double x, const Side& a, const Side& b, std::string_view id) const
    {
        const bool stepped = std::abs(a.radius - b.radius) > 1e-9 * std::max(a.radius, b.radius);
        const double face = a.radius > b.radius ? a.face : b.face, small = std::min(a.radius, b.radius);
        const bool end = !(small > 0.0);
        if (stepped && face > 0.0)
            builder.line({x, -face}, {x, 0.0}, Stroke::thick, Half::upper);
        const double wide = std::max(a.bore, b.bore);
        if (!(wide > 0.0)) {
            if (stepped && face > 0.0)
                builder.line({x, 0.0}, {x, face}, Stroke::thick, Half::upper);
            return;
        }
        // Edges of the bore behind the cut, then the wall's own outline.
        if (end || std::abs(a.bore - b.bore) > 1e-9)
            builder.line({x, 0.0}, {x, wide}, Stroke::thick, Half::upper);
        if (end)
            builder.line({x, wide}, {x, face}, Stroke::thick, Half::upper);
        else if (stepped)
            builder.line({x, small}, {x, face}, Stroke::thick, Half::upper);
        if (!end && !(std::min(a.bore, b.bore) > 0.0) && small > wide) // the section ends in the solid: freehand line
            builder.curve(freehand({x, wide}, {x, small}, id), Stroke::thin, Half::upper);
    }

    [[nodiscard]] bool hasNext(std::size_t index) const
    {
        for (std::size_t i = index + 1; i < shaft_.segments.size(); ++i) {
            if (positive(shaft_.segments[i].length_mm))
                return true;
        }
        return false;
    }
    [[nodiscard]] double neighbourRadius(std::size_t index, int step) const
    {
        for (auto i = static_cast<std::ptrdiff_t>(index) + step;
             i >= 0 && i < static_cast<std::ptrdiff_t>(shaft_.segments.size()); i += step) {
            const Segment& other = shaft_.segments[static_cast<std::size_t>(i)];
            if (!positive(other.length_mm))
                continue;
            const double diameter = step < 0 ? other.outerRight_mm() : other.outer_mm;
            return positive(diameter) ? 0.5 * diameter : 0.0;
        }
        return 0.0;
    }

    [[nodiscard]] double onSheet(double mm) const { return mm * style_.scale; }
    [[nodiscard]] double onModel(double mm) const { return mm / style_.scale; }

    /// Left or right edge of a span from its features.
    [[nodiscard]] Corner cornerOf(const Span& span, bool right) const
    {
        Corner corner;
        const double own = right ? span.r1 : span.r0, other = right ? span.after : span.before;
        const double step = other - own; // > 0: a shoulder rises beside it
        for (const Feature& feature : span.segment.features) {
            const bool here = (feature.position_mm > 0.5 * span.length) == right;
            if (!here || !std::isfinite(feature.length_mm))
                continue;
            if (feature.kind == FeatureKind::fillet && positive(feature.length_mm)) {
                const double r = std::min({feature.length_mm, std::abs(step), 0.45 * span.length});
                // Below 0.7 mm on the sheet an arc is a blot in the corner.
                if (onSheet(r) >= 0.7)
                    corner.fillet = r;
            } else if (feature.kind == FeatureKind::chamfer && positive(feature.length_mm) && step <= 0.0) {
                const double angle = feature.angle_deg > 1.0 && feature.angle_deg < 89.0 ? feature.angle_deg : 45.0;
                corner.chamfer_x = std::min(feature.length_mm, 0.45 * span.length);
                corner.chamfer_r = std::min(corner.chamfer_x * std::tan(angle * pi / 180.0), 0.6 * own);
                if (onSheet(corner.chamfer_x) < 0.35)
                    corner.chamfer_x = corner.chamfer_r = 0.0;
            } else if (feature.kind == FeatureKind::undercut && step > 0.0) {
                const Undercut* row = &undercuts.front();
                for (const Undercut& candidate : undercuts) {
                    row = &candidate;
                    if (2.0 * own <= candidate.up_to_mm)
                        break;
                }
                corner.undercut = true;
                corner.under_t = positive(feature.depth_mm) ? feature.depth_mm : row->t1;
                corner.under_f = positive(feature.length_mm) ? feature.length_mm : row->f;
                corner.under_r = row->r;
                // On the sheet a notch is seen or it is not there.
                corner.under_t = std::min(std::max(corner.under_t, onModel(0.35)), 0.15 * own);
                const double runOut = corner.under_t / std::tan(15.0 * pi / 180.0);
                corner.under_f = std::min(std::max(corner.under_f, corner.under_r + runOut * 1.02), 0.8 * span.length);
                corner.under_r = std::clamp(corner.under_r, corner.under_t, std::max(corner.under_t, corner.under_f - runOut));
                if (corner.under_f < runOut + 1e-9 || corner.under_r - corner.under_t > step)
                    corner.undercut = false;
            }
        }
        return corner;
    }

    /// Edge at the left of a profile; the right one is built mirrored. Returns the points from the joint inwards.
    static Contour cornerPoints(const Corner& corner, double radius, double neighbour)
    {
        Contour points;
        if (corner.undercut) { // E: run-out 15 deg, radius up the shoulder
            const double t = corner.under_t, r = corner.under_r, f = corner.under_f;
            const Point up{0.0, radius + r - t}, low{r, radius - t};
            points.push_back({up.x, up.y, bulgeAbout(up, low, {r, radius + r - t}, true)});
            points.push_back({low.x, low.y, 0.0});
            points.push_back({f - t / std::tan(15.0 * pi / 180.0), radius - t, 0.0});
            points.push_back({f, radius, 0.0});
        } else if (corner.fillet > 0.0 && neighbour > radius) {
            const Point up{0.0, radius + corner.fillet}, low{corner.fillet, radius};
            points.push_back({up.x, up.y, bulgeAbout(up, low, {corner.fillet, radius + corner.fillet}, true)});
            points.push_back({low.x, low.y, 0.0});
        } else if (corner.fillet > 0.0) {
            const Point low{0.0, radius - corner.fillet}, up{corner.fillet, radius};
            points.push_back({low.x, low.y, bulgeAbout(low, up, {corner.fillet, radius - corner.fillet}, false)});
            points.push_back({up.x, up.y, 0.0});
        } else if (corner.chamfer_x > 0.0) {
            points.push_back({0.0, radius - corner.chamfer_r, 0.0});
            points.push_back({corner.chamfer_x, radius, 0.0});
        } else {
            points.push_back({0.0, radius, 0.0});
        }
        return points;
    }

    [[nodiscard]] std::vector<Notch> notchesOf(const Span& span, double from, double to) const
    {
        std::vector<Notch> notches;
        for (const Feature& feature : span.segment.features) {
            if (feature.kind != FeatureKind::groove || !positive(feature.length_mm) || !positive(feature.depth_mm) ||
                !std::isfinite(feature.position_mm))
                continue;
            // A ring groove narrower than 0.7 mm on the sheet is opened to it, on both sides alike.
            const double width = std::max(feature.length_mm, onModel(0.7));
            const double middle = feature.position_mm + 0.5 * feature.length_mm;
            Notch notch{middle - 0.5 * width, middle + 0.5 * width, std::max(feature.depth_mm, onModel(0.35))};
            notch.from = std::max(notch.from, from);
            notch.to = std::min(notch.to, to);
            notch.depth = std::min(notch.depth, 0.6 * std::min(span.radiusAt(notch.from), span.radiusAt(notch.to)));
            if (notch.to > notch.from)
                notches.push_back(notch);
        }
        std::sort(notches.begin(), notches.end(), [](const Notch& a, const Notch& b) { return a.from < b.from; });
        std::vector<Notch> apart;
        for (const Notch& notch : notches) {
            if (apart.empty() || notch.from > apart.back().to)
                apart.push_back(notch);
        }
        return apart;
    }

    void drawSegment(SectionBuilder& builder, const Span& span)
    {
        const Corner left = cornerOf(span, false), right = cornerOf(span, true);
        Contour profile = cornerPoints(left, span.r0, span.before);
        Contour end = mirroredAtCentre(cornerPoints(right, span.r1, span.after));
        for (Vertex& vertex : end)
            vertex.x += span.length;
        const double from = profile.back().x, to = end.back().x;
        const std::vector<Notch> notches = notchesOf(span, from, to);
        for (const Notch& notch : notches) {
            const double a = span.radiusAt(notch.from), b = span.radiusAt(notch.to), floor = std::min(a, b) - notch.depth;
            profile.push_back({notch.from, a, 0.0});
            profile.push_back({notch.from, floor, 0.0});
            profile.push_back({notch.to, floor, 0.0});
            profile.push_back({notch.to, b, 0.0});
        }
        // The right edge in reverse order; each bulge belongs to the vertex where its segment starts.
        for (std::size_t i = end.size(); i-- > 0;)
            profile.push_back({end[i].x, end[i].y, i > 0 ? -end[i - 1].bulge : 0.0});

        Contour ground = profile;
        for (std::size_t i = profile.size(); i-- > 0;)
            ground.push_back({profile[i].x, -profile[i].y, i > 0 ? profile[i - 1].bulge : 0.0});
        builder.white(ground, Half::upper, Stroke::none, Ink::shaft);
        drawBore(builder, span, profile);
        builder.curve(profile, Stroke::thick, Half::both);

        // Faces. The joint at the left is drawn here, over the grounds of both neighbours; the end face by the last segment.
        const auto fullLine = [&](double x, double radius) {
            if (radius > 0.0)
                builder.line({x, -radius}, {x, radius}, Stroke::thick, Half::upper);
        };
        const Side own = sideOf(span, left, false);
        joint(builder, 0.0, previous_, own, segment_id(span));
        previous_ = sideOf(span, right, true);
        if (span.last)
            joint(builder, span.length, previous_, Side{}, segment_id(span));
        // Chamfer edges stand 0.7 mm off the face or not at all.
        if (onSheet(left.chamfer_x) >= 0.7)
            fullLine(left.chamfer_x, span.r0);
        if (onSheet(right.chamfer_x) >= 0.7)
            fullLine(span.length - right.chamfer_x, span.r1);
        for (const Notch& notch : notches) {
            fullLine(notch.from, span.radiusAt(notch.from));
            fullLine(notch.to, span.radiusAt(notch.to));
        }
        for (const Feature& feature : span.segment.features) {
            if (feature.kind == FeatureKind::thread)
                drawThread(builder, span, feature);
            else if (feature.kind == FeatureKind::centre_hole)
                drawCentreHole(builder, span, feature);
            else if (feature.kind == FeatureKind::keyway && style_.detail >= Detail::detailed_sign)
                drawBrokenOut(builder, span, feature);
        }
    }

    /// Bored: the upper half is cut over the length of the bore, the lower half stays a view; border = the axis.
    void drawBore(SectionBuilder& builder, const Span& span, const Contour& profile)
    {
        const Segment& segment = span.segment;
        const double b0 = 0.5 * (std::isfinite(segment.boreLeft_mm()) ? segment.boreLeft_mm() : 0.0);
        const double b1 = 0.5 * (std::isfinite(segment.boreRight_mm()) ? segment.boreRight_mm() : 0.0);
        if (!(b0 > 0.0) && !(b1 > 0.0))
            return;
        if (b0 >= span.r0 || b1 >= span.r1)
            return; // nothing left of the wall: the check says so, the outline stays
        Contour wall = profile;
        wall.push_back({span.length, b1, 0.0});
        wall.push_back({0.0, b0, 0.0});
        builder.white({{0.0, 0.0, 0.0}, {span.length, 0.0, 0.0}, {span.length, b1, 0.0}, {0.0, b0, 0.0}}, Half::upper,
                      Stroke::none);
        builder.white(wall, Half::upper, Stroke::none, style_.detail == Detail::tone_section ? Ink::rule : Ink::paper);
        const Hatching hatching{-45.0, builder.spacingFor_mm(std::min(span.r0 - b0, span.r1 - b1)), false};
        if (style_.detail >= Detail::section)
            builder.hatchOnly(wall, hatching, Half::upper);
        builder.line({0.0, b0}, {span.length, b1}, Stroke::thick, Half::upper);
    }

    [[nodiscard]] Contour freehand(Point from, Point to, std::string_view id) const
    {
        Random random(id);
        const double length = std::hypot(to.x - from.x, to.y - from.y);
        const int count = std::clamp(static_cast<int>(onSheet(length) / 2.0), 2, 12);
        std::vector<Point> points{from};
        for (int i = 1; i < count; ++i) {
            const double t = static_cast<double>(i) / count;
            const double off = onModel((i % 2 == 0 ? 1.0 : -1.0) * (0.45 + 0.55 * random.next()) * 0.9);
            points.push_back({from.x + t * (to.x - from.x) - off * (to.y - from.y) / length,
                              from.y + t * (to.y - from.y) + off * (to.x - from.x) / length});
        }
        points.push_back(to);
        return spline(points);
    }

    static void drawCentreHole(SectionBuilder& builder, const Span& span, const Feature& feature)
    {
        // ISO 6411: the hole must be there on the finished part.
        const bool right = feature.position_mm > 0.5 * span.length;
        const double x = right ? span.length : 0.0, reach = builder.onModel_mm(3.0) * (right ? 1.0 : -1.0);
        const double open = std::min(builder.onModel_mm(1.75), 0.8 * (right ? span.r1 : span.r0));
        builder.curve({{x + reach, open, 0.0}, {x, 0.0, 0.0}, {x + reach, -open, 0.0}}, Stroke::thin, Half::upper);
    }

    void drawThread(SectionBuilder& builder, const Span& span, const Feature& feature) const
    {
        if (!positive(feature.length_mm) || !std::isfinite(feature.position_mm))
            return;
        const double from = std::clamp(feature.position_mm, 0.0, span.length);
        const double to = std::clamp(feature.position_mm + feature.length_mm, 0.0, span.length);
        if (!(to > from))
            return;
        // Root thin (ISO 6410), at least 0.7 mm from the crest on the sheet; depth unset: of a fine thread of pitch d / 20.
        const double r0 = span.radiusAt(from), r1 = span.radiusAt(to);
        const double depth =
            std::min(std::max(positive(feature.depth_mm) ? feature.depth_mm : 0.61 * 0.1 * r0, onModel(0.7)), 0.3 * r0);
        builder.line({from, r0 - depth}, {to, r1 - depth}, Stroke::thin, Half::both);
        if (to < span.length - 1e-6)
            builder.line({to, -r1}, {to, r1}, Stroke::thick, Half::upper);
        if (from > 1e-6)
            builder.line({from, -r0}, {from, r0}, Stroke::thick, Half::upper);
    }

    struct KeyPlace {
        double from, to, depth, radius;
        bool below;
    };
    [[nodiscard]] std::optional<KeyPlace> keyPlace(const Span& span, const Feature& feature) const
    {
        if (feature.kind != FeatureKind::keyway || !positive(feature.length_mm) || !std::isfinite(feature.position_mm))
            return std::nullopt;
        KeyPlace place{};
        place.from = std::clamp(feature.position_mm, 0.0, span.length);
        place.to = std::clamp(feature.position_mm + feature.length_mm, 0.0, span.length);
        place.radius = std::min(span.radiusAt(place.from), span.radiusAt(place.to));
        const double depth = positive(feature.depth_mm) ? feature.depth_mm : 0.125 * 2.0 * place.radius;
        place.depth = std::min(depth, 0.6 * place.radius);
        // The first keyway of the shaft is turned up into the plane of the sheet, one opposite to it lies below.
        place.below = std::cos((feature.angle_deg - firstKeywayAngle()) * pi / 180.0) < -0.5;
        if (!(place.to - place.from > 0.0) || !(place.radius > 0.0) || onSheet(place.depth) < 0.8)
            return std::nullopt;
        return place;
    }
    [[nodiscard]] double firstKeywayAngle() const
    {
        for (const Segment& segment : shaft_.segments) {
            for (const Feature& feature : segment.features) {
                if (feature.kind == FeatureKind::keyway)
                    return feature.angle_deg;
            }
        }
        return 0.0;
    }

    void drawBrokenOut(SectionBuilder& builder, const Span& span, const Feature& feature) const
    {
        const std::optional<KeyPlace> place = keyPlace(span, feature);
        if (!place)
            return;
        const Half half = place->below ? Half::lower : Half::upper;
        const double R = place->radius, floor = R - place->depth;
        // Freehand line from the surface beside the key down below its floor and up again.
        const double margin = onModel(2.8), under = std::min(std::max(1.1 * place->depth, onModel(2.6)), 0.75 * floor);
        const double a = std::max(place->from - margin, onModel(0.3)),
                     b = std::min(place->to + margin, span.length - onModel(0.3));
        if (!(a < place->from && b > place->to))
            return; // the keyway runs out of the end: its floor closes the picture
        const double low = floor - under;
        Random random(span.segment.id.value + feature.id.value);
        const auto waver = [&](int i) { return onModel((i % 2 == 0 ? 1.0 : -1.0) * (0.45 + 0.55 * random.next()) * 0.8); };
        std::vector<Point> points{{a, span.radiusAt(a)}};
        const double slope = 0.6 * margin;
        points.push_back({a + 0.35 * slope, 0.5 * (R + floor)});
        points.push_back({a + slope, floor - 0.45 * under});
        const int across = std::clamp(static_cast<int>(onSheet(b - a) / 4.5), 3, 11);
        const double left = a + 1.6 * slope, right = b - 1.6 * slope;
        for (int i = 0; i <= across && right > left; ++i)
            points.push_back({left + (right - left) * i / across, std::min(low + waver(i), floor - 0.2 * under)});
        points.push_back({b - slope, floor - 0.45 * under});
        points.push_back({b - 0.35 * slope, 0.5 * (R + floor)});
        points.push_back({b, span.radiusAt(b)});
        const Contour edge = spline(points);
        Contour region = edge;
        region.push_back({place->to, R, 0.0});
        region.push_back({place->to, floor, 0.0});
        region.push_back({place->from, floor, 0.0});
        region.push_back({place->from, R, 0.0});
        builder.white(region, half, Stroke::none);
        if (style_.detail >= Detail::section)
            builder.hatchOnly(region, {-45.0, builder.spacingFor_mm(0.8 * under), false}, half);
        builder.curve(edge, Stroke::thin, half);
    }

    /// Keys lie over hubs: a group of their own.
    void drawKeys(std::vector<Group>& keys, const Span& span, double x) const
    {
        for (const Feature& feature : span.segment.features) {
            const std::optional<KeyPlace> place = keyPlace(span, feature);
            if (!place)
                continue;
            SectionBuilder builder(style_);
            builder.place(x, false);
            const double floor = place->radius - place->depth;
            const double height = std::min(keyHeight_mm(feature.width_mm, place->depth), 3.0 * place->depth);
            builder.white(rectangle(place->from, floor, place->to, floor + height), place->below ? Half::lower : Half::upper);
            Group group = builder.take(Layer::key);
            group.subject = "shaft.segments." + span.segment.id.value;
            keys.push_back(std::move(group));
        }
    }

    const Shaft& shaft_;
    const SectionStyle& style_;
    std::vector<Group> groups_;
    Side previous_; ///< right side of the segment before
};

} // namespace

std::vector<Group> shaftOutline(const Shaft& shaft, const SectionStyle& style)
{
    if (!positive(style.scale))
        return {};
    return ShaftDrawer(shaft, style).draw();
}

} // namespace shaftwright::drawing
