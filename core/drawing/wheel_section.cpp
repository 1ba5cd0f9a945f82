// Wheels and other parts on the shaft, ISO 2203 (from memory): solid without teeth, pitch surface as a dash-dotted line,
// hatching ends at the root, teeth white. Gears in half section: upper half cut, lower half view, border = the axis.

#include "core/drawing/section_builder.h"
#include "core/drawing/wheel_shapes.h"

#include <algorithm>
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

/// Proportions of a turned wheel body. Radii and half widths in model mm.
struct Body {
    double bore = 0.0, hub = 0.0, rim_inner = 0.0, rim_outer = 0.0;
    double hub_half = 0.0, rim_half = 0.0, web_half = 0.0;
    [[nodiscard]] bool disc() const { return !(rim_inner > hub); }
};

class WheelDrawer
{
public:
    WheelDrawer(const SectionStyle& style, double shaftRadius_mm) : builder_(style), shaft_(shaftRadius_mm) {}

    SectionBuilder builder_;

    void operator()(const CylindricalGear& gear) { gear.internal ? ringGear(gear) : externalGear(gear); }

    void operator()(const BevelGear& gear)
    {
        const BevelSize size = sizeOf(gear);
        if (!positive(size.outer_mm))
            return;
        builder_.place(0.0, gear.apex == ApexSide::minus);
        const double c = std::cos(size.cone_rad), s = std::sin(size.cone_rad), Re = size.cone_distance_mm, b = size.width_mm;
        const double m = size.module_mm, k = (Re - b) / Re, apex = (Re - 0.5 * b) * c;
        const auto P = [&](double R, double o) { return Point{apex - R * c + o * s, R * s + o * c}; };
        const auto V = [](Point p) { return Vertex{p.x, p.y, 0.0}; };
        const Point tipOut = P(Re, m), rootOut = P(Re, -1.2 * m), rootIn = P(Re - b, -1.2 * m * k), tipIn = P(Re - b, m * k);
        const double bore = boreFor(0.55 * rootIn.y);
        const double overrun = builder_.onModel_mm(3.0);
        if (!size.width_known || simple()) {
            outlineOnly({V(tipOut), V(rootOut), {rootOut.x, 0.0, 0.0}, {rootIn.x, 0.0, 0.0}, V(rootIn), V(tipIn)});
            builder_.line(P(Re + overrun, 0.0), {apex, 0.0}, Stroke::centre);
            return;
        }
        // Body: front face at the small end, back along the back cone, hub behind it.
        const double xFront = std::max(rootIn.x, rootOut.x + 0.2 * b);
        Point back = P(Re, -(1.2 + 2.2) * m);
        const bool integral = rootIn.y < bore * 1.12;
        const double hub = std::min(std::max(1.55 * bore, bore + 2.0 * m), integral ? rootOut.y : std::max(bore * 1.15, back.y));
        if (back.y < hub)
            back = rootOut.y > hub ? P(Re, -(rootOut.y - hub) / c - 1.2 * m) : rootOut;
        const double xHub = std::min(back.x, rootOut.x) - std::max(0.35 * b, 1.2 * m);
        const Contour tooth{V(tipOut), V(rootOut), V(rootIn), V(tipIn)};
        if (!integral) {
            Contour body{{xHub, bore, 0.0}, {xFront, bore, 0.0}};
            if (std::abs(xFront - rootIn.x) > 1e-9)
                body.push_back({xFront, std::max(rootIn.y - 0.3 * m, bore), 0.0});
            body.push_back(V(rootIn));
            body.push_back(V(rootOut));
            if (back.y > hub + 1e-9 || std::abs(back.x - rootOut.x) > 1e-9)
                body.push_back(V(back));
            if (back.y > hub + 1e-6)
                body.push_back({back.x, hub, 0.0});
            body.push_back({xHub, hub, 0.0});
            builder_.cut({body}, hatching(m * 4.0), Half::upper);
            builder_.white(tooth, Half::upper);
        }
        // View: the cones' edges.
        const double bottom = 0.0;
        Contour view{{xHub, bottom, 0.0}, {xHub, hub, 0.0}, {back.x, hub, 0.0}, V(back), V(tipOut), V(tipIn)};
        if (integral)
            view = {{rootOut.x, bottom, 0.0}, V(rootOut), V(tipOut), V(tipIn), V(rootIn)};
        else if (rootIn.y > bore)
            view.push_back(V(rootIn));
        view.push_back({integral ? rootIn.x : xFront, bottom, 0.0});
        const Half halves = integral ? Half::both : Half::lower;
        fillView(view, halves, integral);
        builder_.line({tipOut.x, bottom}, tipOut, Stroke::thick, halves);
        builder_.line({tipIn.x, bottom}, tipIn, Stroke::thick, halves);
        if (!integral)
            builder_.line({back.x, bottom}, {back.x, hub}, Stroke::thick, halves);
        builder_.line(P(Re + overrun, 0.0), {apex, 0.0}, Stroke::centre);
        if (positive(gear.spiral_deg) && gear.hand != Hand::none) {
            const Point middle = P(Re - 0.5 * b, 0.0);
            traces({middle.x, 0.55 * middle.y}, gear.spiral_deg, gear.hand, std::min(0.42 * b * c, builder_.onModel_mm(9.0)),
                   true);
        }
    }

    void operator()(const Worm& worm)
    {
        const WormSize size = sizeOf(worm);
        if (!positive(size.pitch_mm))
            return;
        const double l = 0.5 * size.length_mm, chamfer = std::min(size.module_mm, 0.2 * l);
        const Contour outline{{-l, 0.0, 0.0},
                              {l, 0.0, 0.0},
                              {l, size.tip_mm - chamfer, 0.0},
                              {l - chamfer, size.tip_mm, 0.0},
                              {-l + chamfer, size.tip_mm, 0.0},
                              {-l, size.tip_mm - chamfer, 0.0}};
        fillView(outline, Half::both, true, size.width_known ? Stroke::thick : Stroke::thin);
        pitchLine(size.pitch_mm, l, Half::both);
        if (simple())
            return;
        // Threads lean from the normal of the axis by the lead angle; right hand falls to the right on the near side.
        const double reach = std::min(0.45 * size.pitch_mm, builder_.onModel_mm(9.0)), lean = std::tan(size.lead_rad) * reach;
        const double sense = worm.hand == Hand::left ? -1.0 : 1.0, gap = builder_.onModel_mm(2.0);
        for (const double shift : {-gap, 0.0, gap}) {
            // A view, not mirrored: one stroke across the axis.
            builder_.line({shift - sense * lean, reach}, {shift + sense * lean, -reach}, Stroke::thin, Half::upper);
        }
    }

    void operator()(const WormWheel& wheel)
    {
        const WormWheelSize size = sizeOf(wheel);
        if (!positive(size.pitch_mm))
            return;
        const double m = size.module_mm, axis = size.pitch_mm + size.worm_pitch_mm, h = 0.5 * size.width_mm;
        const double tip = size.worm_pitch_mm - m, root = std::min(size.worm_pitch_mm + 1.25 * m, axis - 0.3 * size.pitch_mm);
        if (!size.width_known || simple()) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, size.outer_mm, 0.0}, {-h, size.outer_mm, 0.0}});
            pitchLine(size.pitch_mm, h, Half::both);
            return;
        }
        const auto depthAt = [&](double radius, double x) { return axis - std::sqrt(std::max(radius * radius - x * x, 0.0)); };
        // Flat outside, then the throat.
        const double drop = axis - size.outer_mm;
        const double throat = tip > drop ? std::min(std::sqrt(tip * tip - drop * drop), 0.92 * h) : 0.5 * h;
        const double throatY = depthAt(tip, throat);
        const double rootHalf = std::min(h, 0.95 * root);
        const double rootY = std::min(depthAt(root, rootHalf), size.outer_mm - 0.3 * m);
        const double bore = boreFor(0.6 * (size.pitch_mm - 1.25 * m));
        Body body = bodyFor(bore, size.pitch_mm - 1.25 * m, h, m);
        Contour contour = bodyContour(body);
        // Replace the flat rim top by the root arc.
        Contour shaped;
        for (const Vertex& vertex : contour) {
            const bool top = std::abs(vertex.y - body.rim_outer) < 1e-9;
            if (!top) {
                shaped.push_back(vertex);
            } else if (vertex.x > 0.0) {
                shaped.push_back({h, rootY, 0.0});
                if (rootHalf < h)
                    shaped.push_back({rootHalf, rootY, 0.0});
                shaped.back().bulge = bulgeAbout({rootHalf, rootY}, {-rootHalf, rootY}, rootCentre(rootHalf, rootY, root), false);
            } else {
                if (rootHalf < h)
                    shaped.push_back({-rootHalf, rootY, 0.0});
                shaped.push_back({-h, rootY, 0.0});
            }
        }
        builder_.cut({shaped}, hatching(2.0 * m));
        Contour tooth{{-h, rootY, 0.0}};
        if (rootHalf < h)
            tooth.push_back({-rootHalf, rootY, 0.0});
        tooth.back().bulge = bulgeAbout({-rootHalf, rootY}, {rootHalf, rootY}, rootCentre(rootHalf, rootY, root), true);
        if (rootHalf < h)
            tooth.push_back({rootHalf, rootY, 0.0});
        tooth.push_back({h, rootY, 0.0});
        tooth.push_back({h, size.outer_mm, 0.0});
        tooth.push_back({throat, size.outer_mm, 0.0});
        if (std::abs(throatY - size.outer_mm) > 1e-6)
            tooth.push_back({throat, throatY, 0.0});
        tooth.back().bulge = bulgeAbout({throat, throatY}, {-throat, throatY}, {0.0, axis}, false);
        tooth.push_back({-throat, throatY, 0.0});
        if (std::abs(throatY - size.outer_mm) > 1e-6)
            tooth.push_back({-throat, size.outer_mm, 0.0});
        tooth.push_back({-h, size.outer_mm, 0.0});
        builder_.white(tooth);
        behind(body);
        // Pitch arc about the worm's axis.
        const double reach = std::min(0.9 * h, 0.8 * size.worm_pitch_mm), y = depthAt(size.worm_pitch_mm, reach);
        builder_.curve({{-reach, y, bulgeAbout({-reach, y}, {reach, y}, {0.0, axis}, true)}, {reach, y, 0.0}}, Stroke::centre);
    }

    void operator()(const BeltPulley& pulley)
    {
        const PulleySize size = sizeOf(pulley);
        if (!positive(size.pitch_mm))
            return;
        const double h = 0.5 * size.width_mm;
        if (!size.width_known || simple()) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, size.outer_mm, 0.0}, {-h, size.outer_mm, 0.0}});
            pitchLine(size.pitch_mm, h, Half::both);
            return;
        }
        switch (pulley.kind) {
        case BeltKind::v:
            vPulley(pulley, size);
            break;
        case BeltKind::ribbed:
            ribbedPulley(pulley, size);
            break;
        case BeltKind::flat:
            flatPulley(size);
            break;
        case BeltKind::toothed:
            toothedPulley(size);
            break;
        }
    }

    void operator()(const ChainSprocket& sprocket)
    {
        const SprocketSize size = sizeOf(sprocket);
        if (!positive(size.pitch_mm) || !positive(sprocket.pitch_mm))
            return;
        const double h = 0.5 * size.width_mm, t = 0.5 * size.tooth_width_mm;
        if (simple()) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, size.tip_mm, 0.0}, {-h, size.tip_mm, 0.0}});
            pitchLine(size.pitch_mm, h, Half::both);
            return;
        }
        const int strands = std::clamp(sprocket.strands, 1, 6);
        const double bore = boreFor(0.6 * size.root_mm), p = sprocket.pitch_mm;
        const double hub = std::min(1.6 * bore, std::max(size.root_mm - 0.55 * p, bore * 1.1));
        const double hubHalf = std::max(h, strands == 1 ? 0.45 * hub : h);
        const double first = -0.5 * (strands - 1) * size.strand_pitch_mm;
        // One disc a strand on a common hub.
        Contour body{{-hubHalf, bore, 0.0}, {hubHalf, bore, 0.0}, {hubHalf, hub, 0.0}};
        std::vector<double> values{-1.0, -1.0, -1.0};
        const double f = std::min(2.0, 0.2 * (size.root_mm - hub));
        for (int i = strands; i-- > 0;) {
            const double x = first + i * size.strand_pitch_mm;
            body.push_back({x + t, hub, 0.0});
            body.push_back({x + t, size.root_mm, 0.0});
            body.push_back({x - t, size.root_mm, 0.0});
            body.push_back({x - t, hub, 0.0});
            values.insert(values.end(), {f, 0.0, 0.0, f});
        }
        body.push_back({-hubHalf, hub, 0.0});
        values.push_back(-1.0);
        if (std::abs(hubHalf - t) < 1e-9) // the disc is its own hub
            body = rectangle(-t, bore, t, size.root_mm), values = {-1.0, -1.0, 0.0, 0.0};
        builder_.cut({softened(body, values)}, hatching(2.0 * t));
        for (int i = 0; i < strands; ++i) {
            const double x = first + i * size.strand_pitch_mm;
            // Tooth flanks rounded towards the tip, radius about the pitch.
            const double land = std::max(t - 0.14 * p, 0.3 * t), start = size.pitch_mm - 0.15 * p;
            const double bulge = 0.18;
            builder_.white({{x - t, size.root_mm, 0.0},
                            {x + t, size.root_mm, 0.0},
                            {x + t, start, bulge},
                            {x + land, size.tip_mm, 0.0},
                            {x - land, size.tip_mm, bulge},
                            {x - t, start, 0.0}});
            pitchLine(size.pitch_mm, t, Half::both, x);
        }
        boreEdges(bore, hubHalf);
    }

    void operator()(const Coupling& coupling)
    {
        Part asPart;
        asPart.body = coupling;
        const double R = partOuterRadius_mm(asPart), h = partHalfLength_mm(asPart);
        if (!positive(R))
            return;
        const bool known = positive(coupling.length_mm);
        if (simple() || !known) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, R, 0.0}, {-h, R, 0.0}});
            return;
        }
        const bool elastic = coupling.radial_force_N || coupling.bending_moment_Nmm || coupling.joint_angle_deg;
        const double bore = boreFor(0.5 * R);
        const double hub = std::clamp(1.6 * bore, bore * 1.1, std::max(0.82 * R, bore * 1.12));
        const double gap = elastic ? std::min(0.22 * 2.0 * h, 0.5 * R) : 0.0, g = 0.5 * gap;
        const double flange = std::min(elastic ? 0.22 * h + g : 0.30 * h, 0.8 * h);
        const double f = std::min(2.0, 0.2 * (R - hub));
        const bool stepped = R > hub * 1.02;
        for (const double side : {-1.0, 1.0}) {
            Contour half = stepped ? Contour{{g, bore, 0.0},     {h, bore, 0.0},   {h, hub, 0.0},
                                             {flange, hub, 0.0}, {flange, R, 0.0}, {g, R, 0.0}}
                                   : rectangle(g, bore, h, R);
            half = softened(half, stepped ? std::vector<double>{0.0, -edge(h), -edge(h), f, -edge(h), 0.0}
                                          : std::vector<double>{0.0, -edge(h), -edge(h), 0.0});
            Hatching own = hatching(0.5 * (R - bore));
            own.angle_deg *= side;
            builder_.cut({side > 0.0 ? half : mirroredAtCentre(half)}, own);
        }
        if (elastic) {
            const double inner = std::max(hub, 0.6 * R), outer = 0.98 * R;
            Hatching rubber = hatching(g);
            rubber.crossed = true;
            builder_.cut({rectangle(-g, std::min(inner, outer - 0.1 * R), g, outer)}, rubber);
        } else if (stepped && R - hub > 0.15 * R) {
            // Bolt on its circle, not cut.
            const double circle = 0.5 * (R + hub), r = std::min(0.16 * (R - hub), 0.35 * flange), head = flange + 1.2 * r;
            builder_.white(rectangle(-flange, circle - r, flange, circle + r));
            builder_.white(rectangle(-head, circle - 1.7 * r, -flange, circle + 1.7 * r));
            builder_.white(rectangle(flange, circle - 1.7 * r, head, circle + 1.7 * r));
            builder_.line({-head - builder_.onModel_mm(2.5), circle}, {head + builder_.onModel_mm(2.5), circle}, Stroke::centre);
        }
        boreEdges(bore, h);
    }

    void operator()(const Impeller& impeller)
    {
        Part asPart;
        asPart.body = impeller;
        const double R = partOuterRadius_mm(asPart), h = partHalfLength_mm(asPart);
        if (!positive(R))
            return;
        if (simple() || !positive(impeller.width_mm)) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, R, 0.0}, {-h, R, 0.0}});
            return;
        }
        // Back disc running into the hub; blades in front of it as thin outline.
        const double bore = boreFor(0.4 * R), hub = std::min(std::max(1.5 * bore, bore + 3.0), 0.7 * R + 0.3 * bore);
        const double disc = std::min(0.16 * 2.0 * h, 0.12 * R);
        const Contour body{{-h, bore, 0.0},
                           {h, bore, 0.0},
                           {h, 0.5 * (bore + hub), 0.0},
                           {0.35 * h, hub, 0.0},
                           {-h + 1.6 * disc, 0.5 * (hub + R), 0.0},
                           {-h + disc, R, 0.0},
                           {-h, R, 0.0}};
        builder_.cut({softened(body, {0.0, -edge(h), -edge(h), std::min(2.0, 0.2 * h), 0.0, 0.0, 0.0})}, hatching(disc));
        const double bulge = 0.22;
        builder_.curve({{-h + disc, R, 0.0},
                        {0.45 * h, R, -bulge},
                        {h, 0.62 * R + 0.38 * hub, 0.0},
                        {0.55 * h, 0.8 * hub + 0.2 * bore, 0.0}},
                       Stroke::thin);
        for (const double share : {0.35, 0.7}) {
            const double x = -h + disc + share * (1.2 * h - disc);
            builder_.curve({{x, R, -bulge}, {x + 0.3 * h, 0.6 * R + 0.4 * hub, 0.0}}, Stroke::thin);
        }
        boreEdges(bore, h);
    }

    void operator()(const WeightBody& weight)
    {
        Part asPart;
        asPart.body = weight;
        const double R = partOuterRadius_mm(asPart), h = partHalfLength_mm(asPart);
        if (!positive(R))
            return;
        if (simple() || !positive(weight.width_mm)) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, R, 0.0}, {-h, R, 0.0}});
            return;
        }
        const double bore = boreFor(0.5 * R);
        Body body = bodyFor(bore, R, h, 0.06 * R);
        if (!body.disc())
            body.rim_inner = std::max(0.72 * R, body.hub * 1.05);
        turned(body, 0.2 * (R - bore));
    }

    void operator()(const PointLoad&) {}
    void operator()(const DistributedLoad&) {}

private:
    [[nodiscard]] bool simple() const { return builder_.style().detail < Detail::tone_section; }
    [[nodiscard]] Hatching hatching(double thickness_mm) const
    {
        return {-45.0, builder_.spacingFor_mm(std::max(thickness_mm, 3.0)), false};
    }
    /// Bore in the part: the shaft, or a usual bore where the shaft is not there; never above `limit`.
    [[nodiscard]] double boreFor(double limit) const { return positive(shaft_) ? shaft_ : limit * 0.5; }
    /// Edge chamfer 1 x 45 deg, smaller on small parts.
    [[nodiscard]] double edge(double half) const
    {
        const double leg = std::min(1.0, 0.12 * half);
        return builder_.onSheet_mm(leg) >= 0.3 ? leg : 0.0;
    }

    void pitchLine(double radius, double half, Half halves, double x = 0.0)
    {
        const double overrun = builder_.onModel_mm(3.0);
        builder_.line({x - half - overrun, radius}, {x + half + overrun, radius}, Stroke::centre, halves);
    }

    /// What is known by its outline only stays thin.
    void outlineOnly(const Contour& contour) { fillView(contour, Half::both, false, simple() ? Stroke::thick : Stroke::thin); }

    /// Ground of a view that reaches from the axis outwards; its border at the axis is no edge.
    void fillView(const Contour& view, Half halves, bool shaftInk, Stroke stroke = Stroke::thick)
    {
        builder_.white(view, halves, Stroke::none, shaftInk ? Ink::shaft : Ink::paper);
        // Edges: everything but the segments on the axis.
        Contour open;
        const std::size_t n = view.size();
        std::size_t start = 0;
        for (std::size_t i = 0; i < n; ++i) {
            if (view[i].y <= 1e-12 && view[(i + 1) % n].y <= 1e-12)
                start = (i + 1) % n;
        }
        for (std::size_t i = 0; i < n; ++i)
            open.push_back(view[(start + i) % n]);
        builder_.curve(open, stroke, halves);
    }

    /// Three thin lines of the tooth trace on the view, 2 mm apart on the sheet; `centre` in the lower half (y > 0 given).
    void traces(Point centre, double angle_deg, Hand hand, double reach, bool curved)
    {
        const double gap = builder_.onModel_mm(2.0), t = std::tan(std::clamp(angle_deg, 0.0, 75.0) * pi / 180.0);
        // Right hand falls to the right on the near side. y here is measured downwards (lower half): falling = growing y.
        const double fall = hand == Hand::left ? -t : t;
        reach = std::min(reach, 0.3 * centre.y / std::max(t, 0.05));
        for (const double shift : {-gap, 0.0, gap}) {
            const Vertex from{centre.x - reach, centre.y + shift - fall * reach,
                              curved ? (hand == Hand::left ? -0.12 : 0.12) : 0.0};
            builder_.curve({from, {centre.x + reach, centre.y + shift + fall * reach, 0.0}}, Stroke::thin, Half::lower);
        }
    }

    [[nodiscard]] static Point rootCentre(double half, double y, double radius)
    {
        return {0.0, y + std::sqrt(std::max(radius * radius - half * half, 0.0))};
    }

    /// Rim 2.5 to 3.6 m under the root, web 0.28 b, hub 1.6 x bore; a full disc where that leaves less than 4 m.
    [[nodiscard]] Body bodyFor(double bore, double root, double half, double module) const
    {
        Body body;
        body.bore = bore;
        body.rim_outer = root;
        body.rim_half = body.hub_half = half;
        body.hub = std::min(1.6 * bore, root);
        body.web_half = 0.28 * half;
        body.rim_inner = root - 3.0 * module;
        if (body.rim_inner - body.hub < 4.0 * module || body.rim_inner - body.hub < builder_.onModel_mm(4.0))
            body.rim_inner = body.hub; // full disc
        return body;
    }

    [[nodiscard]] Contour bodyContour(const Body& body) const
    {
        const double b = body.rim_half, l = body.hub_half, w = body.web_half, e = edge(b);
        Contour contour;
        std::vector<double> values;
        if (body.disc()) {
            if (std::abs(l - b) < 1e-9)
                return softened(rectangle(-b, body.bore, b, body.rim_outer), {-e, -e, 0.0, 0.0});
            contour = {{-l, body.bore, 0.0},     {l, body.bore, 0.0},       {l, body.hub, 0.0},  {b, body.hub, 0.0},
                       {b, body.rim_outer, 0.0}, {-b, body.rim_outer, 0.0}, {-b, body.hub, 0.0}, {-l, body.hub, 0.0}};
            return softened(contour, {-e, -e, -e, 0.0, 0.0, 0.0, 0.0, -e});
        }
        const double f = std::min({2.5, 0.35 * (body.rim_inner - body.hub), 0.6 * (std::min(b, l) - w)});
        contour = {{-l, body.bore, 0.0},      {l, body.bore, 0.0},       {l, body.hub, 0.0},       {w, body.hub, 0.0},
                   {w, body.rim_inner, 0.0},  {b, body.rim_inner, 0.0},  {b, body.rim_outer, 0.0}, {-b, body.rim_outer, 0.0},
                   {-b, body.rim_inner, 0.0}, {-w, body.rim_inner, 0.0}, {-w, body.hub, 0.0},      {-l, body.hub, 0.0}};
        return softened(contour, {-e, -e, -e, f, f, -e, 0.0, 0.0, -e, f, f, -e});
    }

    /// Edges behind the cutting plane that close the picture: rim and hub faces between rim and hub.
    void behind(const Body& body, Half halves = Half::both)
    {
        if (body.disc())
            return;
        // The faces' edges run on to the chamfers of rim and hub.
        const double x = std::min(body.rim_half, body.hub_half), e = edge(body.rim_half);
        for (const double side : {-1.0, 1.0})
            builder_.line({side * x, body.hub - e}, {side * x, body.rim_inner + e}, Stroke::thick, halves);
    }

    /// Faces of a bore that has no shaft in it.
    void boreEdges(double bore, double half)
    {
        if (positive(shaft_))
            return;
        for (const double side : {-1.0, 1.0})
            builder_.line({side * half, 0.0}, {side * half, bore}, Stroke::thick);
    }

    void turned(const Body& body, double thickness)
    {
        builder_.cut({bodyContour(body)}, hatching(thickness));
        behind(body);
        boreEdges(body.bore, body.hub_half);
    }

    void externalGear(const CylindricalGear& gear)
    {
        const GearSize size = sizeOf(gear);
        if (!positive(size.pitch_mm))
            return;
        const double h = 0.5 * size.width_mm, m = size.module_mm;
        if (!size.width_known || simple()) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, size.tip_mm, 0.0}, {-h, size.tip_mm, 0.0}});
            pitchLine(size.pitch_mm, h, Half::both);
            return;
        }
        const double bore = boreFor(0.6 * size.root_mm), e = edge(h);
        const Contour view = softened(rectangle(-h, 0.0, h, size.tip_mm), {0.0, 0.0, -e, -e});
        // Less than 2 m of wall under the root: teeth cut into the shaft, which is not sectioned.
        if (cutIntoShaft(size, bore)) {
            fillView(view, Half::both, true);
            chamferEdges(h, e, size.tip_mm, Half::both);
            pitchLine(size.pitch_mm, h, Half::both);
            gearTraces(gear, h, 0.5 * size.pitch_mm);
            return;
        }
        const Body body = bodyFor(bore, size.root_mm, h, m);
        builder_.cut({bodyContour(body)}, hatching(3.0 * m), Half::upper);
        builder_.white(softened(rectangle(-h, size.root_mm, h, size.tip_mm), {0.0, 0.0, -e, -e}), Half::upper);
        behind(body, Half::upper);
        fillView(view, Half::lower, false);
        chamferEdges(h, e, size.tip_mm, Half::lower);
        pitchLine(size.pitch_mm, h, Half::both);
        gearTraces(gear, h, 0.5 * (size.pitch_mm + std::min(bore, 0.5 * size.pitch_mm)));
        boreEdgesUpper(bore, h);
    }

    void boreEdgesUpper(double bore, double half)
    {
        if (positive(shaft_))
            return;
        for (const double side : {-1.0, 1.0})
            builder_.line({side * half, 0.0}, {side * half, bore}, Stroke::thick, Half::upper);
    }

    void chamferEdges(double half, double leg, double top, Half halves)
    {
        if (builder_.onSheet_mm(leg) < 0.7)
            return; // would run into the face
        for (const double side : {-1.0, 1.0})
            builder_.line({side * (half - leg), 0.0}, {side * (half - leg), top}, Stroke::thick, halves);
    }

    void gearTraces(const CylindricalGear& gear, double half, double y)
    {
        const TraceSize size = tracesOf(gear, half, y, builder_.style().scale);
        if (!positive(size.reach_mm))
            return;
        const double t = std::tan(std::min(gear.helix_deg, 75.0) * pi / 180.0), reach = size.reach_mm;
        if (!gear.double_helical) {
            traces({0.0, y}, gear.helix_deg, gear.hand, reach, false);
            return;
        }
        // Herringbone: the left half as the hand says, the right half against it.
        const double gap = builder_.onModel_mm(2.0), fall = gear.hand == Hand::left ? -t : t;
        for (const double shift : {-gap, 0.0, gap}) {
            builder_.curve({{-reach, y + shift - 0.5 * fall * reach, 0.0},
                            {0.0, y + shift + 0.5 * fall * reach, 0.0},
                            {reach, y + shift - 0.5 * fall * reach, 0.0}},
                           Stroke::thin, Half::lower);
        }
    }

    void ringGear(const CylindricalGear& gear)
    {
        const GearSize size = sizeOf(gear);
        if (!positive(size.pitch_mm) || !positive(size.tip_mm))
            return;
        Part asPart;
        asPart.body = gear;
        const double h = 0.5 * size.width_mm, m = size.module_mm, R = partOuterRadius_mm(asPart);
        if (!size.width_known || simple()) {
            outlineOnly({{-h, 0.0, 0.0}, {h, 0.0, 0.0}, {h, R, 0.0}, {-h, R, 0.0}});
            pitchLine(size.pitch_mm, h, Half::both);
            return;
        }
        // Bell: ring, disc at the left, hub. The disc leaves the teeth's run-out free.
        const double bore = boreFor(0.4 * size.tip_mm), hub = std::min(1.6 * bore, 0.5 * (bore + size.tip_mm));
        const double wall = std::max(0.2 * size.width_mm, 2.0 * m), clear = std::max(1.0 * m, 0.5), e = edge(h);
        const double xDisc = -h - clear - wall;
        if (bore < size.tip_mm - 3.0 * m) {
            const Contour bell{{xDisc, bore, 0.0},
                               {h * 0.2, bore, 0.0},
                               {h * 0.2, hub, 0.0},
                               {-h - clear, hub, 0.0},
                               {-h - clear, size.root_mm + 0.6 * m, 0.0},
                               {-h, size.root_mm + 0.6 * m, 0.0},
                               {-h, size.root_mm, 0.0},
                               {h, size.root_mm, 0.0},
                               {h, R, 0.0},
                               {xDisc, R, 0.0}};
            builder_.cut({softened(bell, {-e, -e, -e, std::min(2.0, 0.3 * wall), 0.0, 0.0, 0.0, 0.0, -e, -e})}, hatching(3.0 * m),
                         Half::upper);
        } else {
            builder_.cut({rectangle(-h, size.root_mm, h, R)}, hatching(3.0 * m), Half::upper);
        }
        builder_.white(rectangle(-h, size.tip_mm, h, size.root_mm), Half::upper);
        builder_.line({h, bore}, {h, size.tip_mm}, Stroke::thick, Half::upper); // face of the far half
        pitchLine(size.pitch_mm, h, Half::upper);
        const Contour view = softened(rectangle(bore < size.tip_mm - 3.0 * m ? xDisc : -h, 0.0, h, R), {0.0, 0.0, -e, -e});
        fillView(view, Half::lower, false);
        gearTraces(gear, h, 0.6 * size.pitch_mm);
    }

    void vPulley(const BeltPulley& pulley, const PulleySize& size)
    {
        const VProfile& profile = vProfileOf(pulley);
        const int n = std::clamp(pulley.grooves, 1, 40);
        const double h = 0.5 * size.width_mm, phi = 0.5 * grooveAngle_deg(pulley, profile) * pi / 180.0;
        // Grooves that do not fit the stated width move together.
        double pitch = profile.pitch;
        const double room = size.width_mm - 2.0 * std::min(profile.edge, 0.42 * size.width_mm);
        if (n > 1 && (n - 1) * pitch > room)
            pitch = room / (n - 1);
        const double squeeze = std::min({1.0, pitch / profile.pitch, 0.45 * size.width_mm / profile.datum_width});
        const double half = 0.5 * profile.datum_width * squeeze;
        const double topHalf = half + (size.outer_mm - size.pitch_mm) * std::tan(phi);
        const double floorHalf = std::max(half - (size.pitch_mm - size.root_mm) * std::tan(phi), 0.15 * half);
        const double bore = boreFor(0.6 * size.root_mm);
        const double rim = std::max({0.35 * profile.below, 4.0});
        Body body = bodyFor(bore, size.outer_mm, h, 0.0);
        body.rim_inner = size.root_mm - rim;
        body.web_half = std::max(0.28 * h, 3.0);
        body.hub = std::min(1.65 * bore, std::max(size.root_mm - 0.3 * rim, 1.05 * bore));
        if (body.rim_inner - body.hub < std::max(6.0, builder_.onModel_mm(3.0)) || body.web_half > 0.8 * h)
            body.rim_inner = body.hub;
        body.hub_half = std::max(h, 0.0);
        Contour contour;
        for (const Vertex& vertex : bodyContour(body)) {
            const bool top = std::abs(vertex.y - body.rim_outer) < 1e-9;
            if (top && vertex.x > 0.0) {
                contour.push_back(vertex);
                for (int i = n; i-- > 0;) {
                    const double x = (i - 0.5 * (n - 1)) * pitch;
                    contour.push_back({x + topHalf, size.outer_mm, 0.0});
                    contour.push_back({x + floorHalf, size.root_mm, 0.0});
                    contour.push_back({x - floorHalf, size.root_mm, 0.0});
                    contour.push_back({x - topHalf, size.outer_mm, 0.0});
                }
            } else {
                contour.push_back(vertex);
            }
        }
        builder_.cut({contour}, hatching(rim));
        behind(body);
        pitchLine(size.pitch_mm, h, Half::both);
        boreEdges(bore, body.hub_half);
    }

    void ribbedPulley(const BeltPulley& pulley, const PulleySize& size)
    {
        const int n = std::clamp(pulley.grooves, 3, 40);
        const double h = 0.5 * size.width_mm, pitch = size.width_mm / (n + 0.6), depth = size.outer_mm - size.root_mm;
        const double bore = boreFor(0.6 * size.root_mm);
        Body body = bodyFor(bore, size.outer_mm, h, std::max(depth, 3.0));
        const bool teeth = builder_.onSheet_mm(pitch) >= 1.4; // finer ribs would run together
        Contour contour;
        for (const Vertex& vertex : bodyContour(body)) {
            contour.push_back(vertex);
            if (!teeth || std::abs(vertex.y - body.rim_outer) > 1e-9 || vertex.x < 0.0)
                continue;
            for (int i = n; i-- > 0;) {
                const double x = (i - 0.5 * (n - 1)) * pitch;
                const double top = 0.38 * pitch, floor = 0.12 * pitch;
                contour.push_back({x + top, size.outer_mm, 0.0});
                contour.push_back({x + floor, size.root_mm, 0.0});
                contour.push_back({x - floor, size.root_mm, 0.0});
                contour.push_back({x - top, size.outer_mm, 0.0});
            }
        }
        builder_.cut({contour}, hatching(std::max(depth, 3.0)));
        if (!teeth)
            builder_.line({-h, size.root_mm}, {h, size.root_mm}, Stroke::thin);
        behind(body);
        pitchLine(size.outer_mm + builder_.onModel_mm(0.8), h, Half::both); // the effective line runs outside the ribs
        boreEdges(bore, body.hub_half);
    }

    void flatPulley(const PulleySize& size)
    {
        const double h = 0.5 * size.width_mm, R = size.outer_mm, bore = boreFor(0.6 * R);
        Body body = bodyFor(bore, R, h, std::max(0.02 * R, 2.0));
        // Crown 0.3 to 1.2 mm, drawn at least 1 mm on the sheet.
        const double crown = std::min(std::max(1.0, builder_.onModel_mm(1.0)), 0.2 * std::min(h, R - body.hub));
        Contour contour;
        for (const Vertex& vertex : bodyContour(body)) {
            if (std::abs(vertex.y - R) > 1e-9) {
                contour.push_back(vertex);
                continue;
            }
            contour.push_back({vertex.x, R - crown, vertex.x > 0.0 ? crown / h : 0.0}); // bulge of a low arc: height / half chord
        }
        builder_.cut({contour}, hatching(std::max(0.02 * R, 3.0)));
        behind(body);
        boreEdges(bore, body.hub_half);
    }

    void toothedPulley(const PulleySize& size)
    {
        const double h = 0.5 * size.width_mm, bore = boreFor(0.6 * size.root_mm), depth = size.outer_mm - size.root_mm;
        const double flange = std::min(1.8, 0.12 * h), inside = h - flange;
        Body body = bodyFor(bore, size.root_mm, inside, std::max(depth, 3.0));
        builder_.cut({bodyContour(body)}, hatching(3.0 * depth));
        builder_.white(rectangle(-inside, size.root_mm, inside, size.outer_mm));
        behind(body);
        // Flanges, thin sheet: solid, leaning outwards.
        const double top = size.pitch_mm + 2.0 * depth, low = size.root_mm - depth, lean = 0.4 * flange;
        for (const double side : {-1.0, 1.0})
            builder_.solid({{side * inside, low, 0.0},
                            {side * (inside + flange - lean), low, 0.0},
                            {side * (inside + flange), top, 0.0},
                            {side * (inside + lean), top, 0.0},
                            {side * inside, size.outer_mm, 0.0}});
        pitchLine(size.pitch_mm, h, Half::both);
        boreEdges(bore, body.hub_half);
    }

    double shaft_;
};

} // namespace

bool cutIntoShaft(const GearSize& size, double bore_mm)
{
    return size.root_mm - bore_mm < 2.0 * size.module_mm;
}

TraceSize tracesOf(const CylindricalGear& gear, double half_width_mm, double y_mm, double scale)
{
    if (!positive(gear.helix_deg) || (gear.hand == Hand::none && !gear.double_helical) || !positive(scale))
        return {};
    const double t = std::tan(std::min(gear.helix_deg, 75.0) * pi / 180.0);
    double reach = std::min(9.0 / scale, 0.42 * half_width_mm * (gear.double_helical ? 2.0 : 1.6));
    reach = std::min(reach, 0.35 * y_mm / std::max(t, 0.05));
    return {y_mm, reach, (gear.double_helical ? 0.5 : 1.0) * t * reach};
}

ShaftCover shaftCover(const Part& part, double shaft_radius_mm, Detail detail, double scale)
{
    ShaftCover cover;
    const bool swallowed = partOuterRadius_mm(part) <= shaft_radius_mm * 1.001;
    if (swallowed || std::holds_alternative<PointLoad>(part.body) || std::holds_alternative<DistributedLoad>(part.body))
        return cover;
    bool outline = detail < Detail::tone_section; // an outline hides the shaft on both sides
    if (const auto* gear = std::get_if<CylindricalGear>(&part.body)) {
        const GearSize size = sizeOf(*gear);
        outline = outline || !size.width_known;
        cover.lower = true;
        const bool integral = !gear->internal && cutIntoShaft(size, shaft_radius_mm);
        cover.upper = integral;
        if (!outline) {
            const double y = gear->internal ? 0.6 * size.pitch_mm
                             : integral     ? 0.5 * size.pitch_mm
                                            : 0.5 * (size.pitch_mm + std::min(shaft_radius_mm, 0.5 * size.pitch_mm));
            const TraceSize trace = tracesOf(*gear, 0.5 * size.width_mm, y, scale);
            cover.trace_y_mm = trace.y_mm;
            cover.trace_reach_mm = trace.reach_mm;
            cover.trace_rise_mm = trace.rise_mm;
        }
    } else if (const auto* bevel = std::get_if<BevelGear>(&part.body)) {
        const BevelSize size = sizeOf(*bevel);
        outline = outline || !size.width_known;
        cover.lower = true;
        if (!outline && positive(bevel->spiral_deg) && bevel->hand != Hand::none && positive(scale)) {
            const double t = std::tan(std::min(bevel->spiral_deg, 75.0) * pi / 180.0);
            cover.trace_y_mm = 0.55 * (size.cone_distance_mm - 0.5 * size.width_mm) * std::sin(size.cone_rad);
            cover.trace_reach_mm = std::min(
                {0.42 * size.width_mm * std::cos(size.cone_rad), 9.0 / scale, 0.3 * cover.trace_y_mm / std::max(t, 0.05)});
            cover.trace_rise_mm = t * cover.trace_reach_mm;
        }
    } else if (const auto* worm = std::get_if<Worm>(&part.body)) {
        cover.lower = cover.upper = true;
        const WormSize size = sizeOf(*worm);
        if (!outline && positive(size.pitch_mm) && positive(scale)) { // across the axis
            cover.trace_rise_mm = std::min(0.45 * size.pitch_mm, 9.0 / scale);
            cover.trace_reach_mm = std::tan(size.lead_rad) * cover.trace_rise_mm + 2.0 / scale;
        }
    } else if (const auto* wheel = std::get_if<WormWheel>(&part.body)) {
        outline = outline || !sizeOf(*wheel).width_known;
    } else if (const auto* pulley = std::get_if<BeltPulley>(&part.body)) {
        outline = outline || !sizeOf(*pulley).width_known;
    } else if (const auto* coupling = std::get_if<Coupling>(&part.body)) {
        outline = outline || !positive(coupling->length_mm);
    } else if (const auto* impeller = std::get_if<Impeller>(&part.body)) {
        outline = outline || !positive(impeller->width_mm);
    } else if (const auto* weight = std::get_if<WeightBody>(&part.body)) {
        outline = outline || !positive(weight->width_mm);
    }
    if (outline)
        cover.lower = cover.upper = true;
    return cover;
}

Group partSection(const Part& part, double shaft_diameter_mm, const SectionStyle& style)
{
    if (!positive(style.scale))
        return {};
    WheelDrawer drawer(style, std::isfinite(shaft_diameter_mm) ? std::max(0.5 * shaft_diameter_mm, 0.0) : 0.0);
    // A part that its own shaft would swallow is an outline around the shaft.
    if (std::isfinite(shaft_diameter_mm) && partOuterRadius_mm(part) <= 0.5 * shaft_diameter_mm * 1.001 &&
        partOuterRadius_mm(part) > 0.0) {
        const double h = partHalfLength_mm(part), R = partOuterRadius_mm(part);
        drawer.builder_.curve({{-h, 0.0, 0.0}, {-h, R, 0.0}, {h, R, 0.0}, {h, 0.0, 0.0}}, Stroke::thin);
        return drawer.builder_.take(Layer::part);
    }
    std::visit(drawer, part.body);
    return drawer.builder_.take(Layer::part);
}

} // namespace shaftwright::drawing
