#include "core/drawing/bearing_shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shaftwright::drawing
{

namespace
{

constexpr double pi = 3.14159265358979323846;

double chordHalf(double radius, double offset)
{
    return std::sqrt(std::max(radius * radius - offset * offset, 0.0));
}

/// The parts of one row before they are laid on the sheet.
struct RowParts {
    std::vector<Contour> rings; ///< one hatching: one purchased part
    std::vector<Contour> other; ///< loose rib ring, guide ring: the other way
    std::vector<Contour> cages; ///< solid cages: the other way, half spacing
    std::vector<Contour> black; ///< pressed cages, shields, seals
    std::vector<Contour> rollers;
    struct Ball {
        Point centre;
        double radius;
    };
    std::vector<Ball> balls;
    struct Cross {
        Point centre;
        double along, across, angle;
    };
    std::vector<Cross> crosses;
    std::vector<std::pair<Point, Point>> seams;    ///< thick lines inside a ring
    std::vector<std::pair<Point, Point>> contacts; ///< contact lines to the axis
    std::vector<double> effective;                 ///< effective centres on the axis
    double thinnest = 0.0;                         ///< of the rings, for the spacing of hatch lines
};

class RowDrawer
{
public:
    RowDrawer(const SectionBuilder& builder, const RowDimensions& row)
        : row_(row), Dw_(row.inside.element_diameter_mm), Rp_(0.5 * row.inside.pitch_diameter_mm), half_(0.5 * row.W)
    {
        full_ = builder.style().detail == Detail::full_section;
        // Small sections show no cage: it would be a blot.
        cage_ = full_ || (builder.style().detail == Detail::section && builder.onSheet_mm(row.section()) >= 7.0);
        const double thinnestRing = std::min(Rp_ - 0.5 * Dw_ - 0.5 * row.d, 0.5 * row.D - Rp_ - 0.5 * Dw_);
        parts_.thinnest = std::max(thinnestRing, 0.2 * row.section());
        // A fillet below 0.35 mm on the sheet is a corner.
        const double fillet = std::min({row.chamfer, 0.45 * half_, 0.8 * parts_.thinnest});
        corner_ = builder.onSheet_mm(fillet) >= 0.35 && builder.style().detail >= Detail::section ? fillet : 0.0;
        edge_ = full_ ? -0.4 * corner_ : 0.0;
    }

    RowParts& parts() { return parts_; }

    void build()
    {
        switch (row_.geometry_class) {
        case GeometryClass::deep_groove_ball:
            deepGroove();
            break;
        case GeometryClass::deep_groove_ball_two_row:
            deepGrooveTwoRow();
            break;
        case GeometryClass::angular_contact_ball:
            angular();
            break;
        case GeometryClass::angular_contact_ball_double:
            angularDouble();
            break;
        case GeometryClass::four_point_contact_ball:
            fourPoint();
            break;
        case GeometryClass::self_aligning_ball:
            selfAligning();
            break;
        case GeometryClass::cylindrical_roller:
        case GeometryClass::cylindrical_roller_full:
            cylindrical();
            break;
        case GeometryClass::needle:
            needle();
            break;
        case GeometryClass::needle_drawn_cup:
            drawnCup();
            break;
        case GeometryClass::tapered_roller:
            tapered();
            break;
        case GeometryClass::spherical_roller:
            spherical();
            break;
        case GeometryClass::thrust_ball:
            thrustBall();
            break;
        case GeometryClass::thrust_ball_double:
            thrustBallDouble();
            break;
        case GeometryClass::cylindrical_roller_thrust:
            thrustRoller();
            break;
        case GeometryClass::needle_roller_thrust:
            thrustNeedle();
            break;
        case GeometryClass::spherical_roller_thrust:
            thrustSpherical();
            break;
        }
    }

private:
    // --- helpers ---

    void ball(double x)
    {
        parts_.balls.push_back({{x, Rp_}, 0.5 * Dw_});
        parts_.crosses.push_back({{x, Rp_}, 0.62 * Dw_, 0.62 * Dw_, 0.0});
    }

    void roller(Contour contour, double softening, Point centre, double along, double across, double angle)
    {
        const std::size_t corners = contour.size();
        parts_.rollers.push_back(softening > 0.0 ? softened(contour, std::vector<double>(corners, softening))
                                                 : std::move(contour));
        parts_.crosses.push_back({centre, along, across, angle});
    }

    void cageBox(double x0, double y0, double x1, double y1)
    {
        if (cage_ && x1 - x0 > 0.0 && y1 - y0 > 0.0)
            parts_.cages.push_back(rectangle(x0, y0, x1, y1));
    }

    /// Ring sector of a pressed cage beside a ball, `side` -1 left, +1 right.
    void pressedCage(Point ball, double side, double inner, double outer, double halfAngle)
    {
        if (!cage_)
            return;
        const double c = std::cos(halfAngle), s = std::sin(halfAngle), bulge = std::tan(0.5 * halfAngle);
        // Built on the right, mirrored for the left.
        Contour contour{{ball.x + inner * c, ball.y + inner * s, -bulge},
                        {ball.x + inner * c, ball.y - inner * s, 0.0},
                        {ball.x + outer * c, ball.y - outer * s, bulge},
                        {ball.x + outer * c, ball.y + outer * s, 0.0}};
        if (side < 0.0) {
            for (Vertex& vertex : contour) {
                vertex.x = 2.0 * ball.x - vertex.x;
                vertex.bulge = -vertex.bulge;
            }
        }
        parts_.black.push_back(std::move(contour));
    }

    void contact(Point from, double axisX)
    {
        parts_.contacts.push_back({from, {axisX, 0.0}});
        parts_.effective.push_back(axisX);
    }
    void radialContact(double x) { parts_.contacts.push_back({{x, Rp_ + 0.5 * Dw_}, {x, 0.0}}); }

    [[nodiscard]] double innerConformity() const
    {
        return row_.inside.conformity_inner > 0.5 && row_.inside.conformity_inner < 0.6 ? row_.inside.conformity_inner : 0.52;
    }
    [[nodiscard]] double outerConformity() const
    {
        return row_.inside.conformity_outer > 0.5 && row_.inside.conformity_outer < 0.6 ? row_.inside.conformity_outer : 0.53;
    }

    /// A groove of a ring: crossing of its circle with the shoulder levels left and right.
    struct Groove {
        Point centre;
        double radius;
        double left_level, right_level; ///< y of the shoulders
        [[nodiscard]] double leftX() const { return centre.x - chordHalf(radius, left_level - centre.y); }
        [[nodiscard]] double rightX() const { return centre.x + chordHalf(radius, right_level - centre.y); }
    };

    /// Inner ring from its grooves, ordered from left to right; shoulders of neighbours are joined.
    void innerRing(const std::vector<Groove>& grooves)
    {
        Contour contour{{-half_, 0.5 * row_.d, 0.0}, {half_, 0.5 * row_.d, 0.0}, {half_, grooves.back().right_level, 0.0}};
        for (std::size_t i = grooves.size(); i-- > 0;) {
            const Groove& g = grooves[i];
            const Point right{g.rightX(), g.right_level}, left{g.leftX(), g.left_level};
            contour.push_back({right.x, right.y, bulgeAbout(right, left, g.centre, false)});
            contour.push_back({left.x, left.y, 0.0});
        }
        contour.push_back({-half_, grooves.front().left_level, 0.0});
        std::vector<double> values(contour.size(), 0.0);
        values[0] = values[1] = corner_;
        values[2] = values.back() = edge_;
        parts_.rings.push_back(softened(contour, values));
    }

    void outerRing(const std::vector<Groove>& grooves, double leftFaceLevel)
    {
        Contour contour{{-half_, leftFaceLevel, 0.0}};
        for (const Groove& g : grooves) {
            const Point right{g.rightX(), g.right_level}, left{g.leftX(), g.left_level};
            contour.push_back({left.x, left.y, bulgeAbout(left, right, g.centre, false)});
            contour.push_back({right.x, right.y, 0.0});
        }
        contour.push_back({half_, grooves.back().right_level, 0.0});
        contour.push_back({half_, 0.5 * row_.D, 0.0});
        contour.push_back({-half_, 0.5 * row_.D, 0.0});
        const std::size_t n = contour.size();
        std::vector<double> values(n, 0.0);
        values[n - 1] = values[n - 2] = corner_;
        values[0] = values[n - 3] = edge_;
        parts_.rings.push_back(softened(contour, values));
    }

    // --- ball bearings ---

    void deepGroove()
    {
        const bool covered = row_.covers_left != Covers::none || row_.covers_right != Covers::none;
        const double h = (covered ? 0.18 : 0.20) * Dw_;
        const double rhoI = innerConformity() * Dw_, rhoE = outerConformity() * Dw_;
        const double Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_, si = Ri + h, se = Re - h;
        innerRing({{{0.0, Ri + rhoI}, rhoI, si, si}});

        const Groove outer{{0.0, Re - rhoE}, rhoE, se, se};
        if (!covered) {
            outerRing({outer}, se);
        } else {
            Contour contour;
            const double g = outer.rightX();
            recess(contour, -1.0, row_.covers_left, se, g);
            contour.push_back({-g, se, bulgeAbout({-g, se}, {g, se}, outer.centre, false)});
            contour.push_back({g, se, 0.0});
            recess(contour, 1.0, row_.covers_right, se, g);
            contour.push_back({half_, 0.5 * row_.D, 0.0});
            contour.push_back({-half_, 0.5 * row_.D, 0.0});
            std::vector<double> values(contour.size(), 0.0);
            values[contour.size() - 1] = values[contour.size() - 2] = corner_;
            parts_.rings.push_back(softened(contour, values));
            cover(-1.0, row_.covers_left, si, se);
            cover(1.0, row_.covers_right, si, se);
        }
        ball(0.0);
        const double halfAngle = std::asin(std::clamp(0.62 * (0.5 * Dw_ - h) / (0.55 * Dw_), 0.0, 1.0));
        for (const double side : {-1.0, 1.0}) {
            const bool tight = (side < 0.0 ? row_.covers_left : row_.covers_right) != Covers::none;
            pressedCage({0.0, Rp_}, side, 0.507 * Dw_, tight ? std::min(0.577 * Dw_, 0.40 * row_.W) : 0.577 * Dw_,
                        tight ? 0.8 * halfAngle : halfAngle);
        }
        radialContact(0.0);
    }

    /// Seat of a cover in the outer shoulder, in the order of the contour (left to right along the raceway side).
    void recess(Contour& contour, double side, Covers cover, double level, double grooveEdge) const
    {
        const double B = row_.W, lip = 0.035 * B, u = recessDepth();
        const double w = std::min(0.105 * B, 0.8 * (half_ - lip - grooveEdge));
        Contour points{{half_, level, 0.0}};
        if (cover != Covers::none && w > 0.0) {
            points.push_back({half_ - lip, level, 0.0});
            points.push_back({half_ - lip, level + u, 0.0});
            points.push_back({half_ - lip - 0.55 * w, level + u, 0.0});
            points.push_back({half_ - lip - w, level, 0.0});
        }
        if (side > 0.0) {
            for (std::size_t i = points.size(); i-- > 0;)
                contour.push_back(points[i]);
        } else {
            for (Vertex& point : points)
                contour.push_back({-point.x, point.y, 0.0});
        }
    }
    [[nodiscard]] double recessDepth() const
    {
        return std::min(0.10 * Dw_, 0.45 * (0.5 * row_.D - (Rp_ + 0.5 * Dw_ - 0.18 * Dw_)));
    }

    void cover(double side, Covers kind, double innerLevel, double outerLevel)
    {
        if (kind == Covers::none)
            return;
        const double B = row_.W, u = recessDepth(), x0 = half_ - 0.037 * B, w = 0.105 * B;
        const bool shield = kind == Covers::shields;
        const double t = std::min((shield ? 0.05 : 0.055) * Dw_, 0.4 * w);
        Contour contour;
        if (shield) {
            const double gap = 0.055 * Dw_;
            contour = {{x0, outerLevel + 0.9 * u, 0.0},
                       {x0 - 0.5 * w, outerLevel + 0.9 * u, 0.0},
                       {x0 - 0.5 * w, outerLevel + 0.9 * u - t, 0.0},
                       {x0 - t, outerLevel + 0.9 * u - t, 0.0},
                       {x0 - t, innerLevel + gap, 0.0},
                       {x0, innerLevel + gap, 0.0}};
        } else {
            const double lipTop = innerLevel + 0.20 * Dw_;
            contour = {{x0, outerLevel + 0.9 * u, 0.0},
                       {x0 - 0.5 * w, outerLevel + 0.9 * u, 0.0},
                       {x0 - 0.5 * w, outerLevel + 0.9 * u - t, 0.0},
                       {x0 - t, outerLevel + 0.9 * u - t, 0.0},
                       {x0 - t, lipTop, 0.0},
                       {x0 - 0.115 * B, innerLevel, 0.0}, // the lip's edge runs on the shoulder
                       {x0, lipTop - 0.08 * Dw_, 0.0}};
        }
        parts_.black.push_back(side > 0.0 ? contour : mirroredAtCentre(contour));
    }

    void deepGrooveTwoRow()
    {
        const double a = rowDistance(1.06 * Dw_), h = 0.20 * Dw_, Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_;
        const double rhoI = innerConformity() * Dw_, rhoE = outerConformity() * Dw_;
        std::vector<Groove> inner, outer;
        for (const double x : {-0.5 * a, 0.5 * a}) {
            inner.push_back({{x, Ri + rhoI}, rhoI, Ri + h, Ri + h});
            outer.push_back({{x, Re - rhoE}, rhoE, Re - h, Re - h});
        }
        innerRing(inner);
        outerRing(outer, Re - h);
        for (const double x : {-0.5 * a, 0.5 * a}) {
            ball(x);
            radialContact(x);
            outsideCage(x, x < 0.0 ? -1.0 : 1.0);
        }
    }

    [[nodiscard]] double rowDistance(double otherwise) const
    {
        const double a = row_.inside.row_distance_mm > 0.0 ? row_.inside.row_distance_mm : otherwise;
        return std::min(a, row_.W - 1.02 * Dw_);
    }

    /// Cage rim between a ball and the face of the bearing.
    void outsideCage(double x, double side, double lift = 0.0)
    {
        const double from = std::min(std::abs(x) + 0.40 * Dw_, half_), to = std::min(std::abs(x) + 0.62 * Dw_, 0.965 * half_);
        const double x0 = side > 0.0 ? from : -to, x1 = side > 0.0 ? to : -from;
        cageBox(x0, Rp_ + lift - 0.10 * Dw_, x1, Rp_ + lift + 0.10 * Dw_);
    }

    void angular()
    {
        const double alpha = row_.inside.contact_angle_rad, c = std::cos(alpha), s = std::sin(alpha);
        const double rhoI = innerConformity() * Dw_, rhoE = outerConformity() * Dw_, eI = rhoI - 0.5 * Dw_, eE = rhoE - 0.5 * Dw_;
        const double Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_;
        const double high = std::max(0.20, 0.5 * (1.0 - std::cos(alpha + 15.0 * pi / 180.0))) * Dw_;
        innerRing({{{eI * s, Rp_ + eI * c}, rhoI, Ri + high, Ri + 0.13 * Dw_}});
        const Groove outer{{-eE * s, Rp_ - eE * c}, rhoE, Re - 0.03 * Dw_, Re - high};
        outerRing({outer}, std::min(Re + 0.02 * Dw_, 0.5 * row_.D - 0.25 * (0.5 * row_.D - Re)));
        ball(0.0);
        outsideCage(0.0, -1.0, 0.08 * Dw_);
        outsideCage(0.0, 1.0, -0.08 * Dw_);
        contact({0.5 * Dw_ * s, Rp_ + 0.5 * Dw_ * c}, half_ - row_.effective_from_back);
    }

    void angularDouble()
    {
        const double alpha = row_.inside.contact_angle_rad, c = std::cos(alpha), s = std::sin(alpha);
        const double rhoI = innerConformity() * Dw_, rhoE = outerConformity() * Dw_, eI = rhoI - 0.5 * Dw_, eE = rhoE - 0.5 * Dw_;
        const double Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_, x = 0.5 * rowDistance(1.05 * Dw_);
        const double high = std::max(0.20, 0.5 * (1.0 - std::cos(alpha + 15.0 * pi / 180.0))) * Dw_, low = 0.10 * Dw_;
        innerRing(
            {{{-x + eI * s, Rp_ + eI * c}, rhoI, Ri + high, Ri + low}, {{x - eI * s, Rp_ + eI * c}, rhoI, Ri + low, Ri + high}});
        outerRing(
            {{{-x - eE * s, Rp_ - eE * c}, rhoE, Re - low, Re - high}, {{x + eE * s, Rp_ - eE * c}, rhoE, Re - high, Re - low}},
            Re - low);
        for (const double side : {-1.0, 1.0}) {
            ball(side * x);
            outsideCage(side * x, side);
            contact({side * (x - 0.5 * Dw_ * s), Rp_ + 0.5 * Dw_ * c}, side * (x + Rp_ * std::tan(alpha)));
        }
    }

    void fourPoint()
    {
        const double alpha = row_.inside.contact_angle_rad > 0.1 ? row_.inside.contact_angle_rad : 35.0 * pi / 180.0;
        const double c = std::cos(alpha), s = std::sin(alpha), rho = 0.53 * Dw_, e = rho - 0.5 * Dw_, h = 0.20 * Dw_;
        const double Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_, si = Ri + h, se = Re - h;
        const double apex = chordHalf(rho, e * s); // of the arch, from the height of the flank centres
        // Inner flanks: the right one touches at (+sin, -cos), its centre lies opposite.
        const double ci = Rp_ + e * c, gi = chordHalf(rho, si - ci) - e * s, yi = ci - apex;
        Contour inner{{-half_, 0.5 * row_.d, 0.0},
                      {half_, 0.5 * row_.d, 0.0},
                      {half_, si, 0.0},
                      {gi, si, bulgeAbout({gi, si}, {0.0, yi}, {-e * s, ci}, false)},
                      {0.0, yi, bulgeAbout({0.0, yi}, {-gi, si}, {e * s, ci}, false)},
                      {-gi, si, 0.0},
                      {-half_, si, 0.0}};
        parts_.rings.push_back(softened(inner, {corner_, corner_, edge_, 0.0, 0.0, 0.0, edge_}));
        const double ce = Rp_ - e * c, ge = chordHalf(rho, se - ce) - e * s, ye = ce + apex;
        Contour outer{{-half_, se, 0.0},
                      {-ge, se, bulgeAbout({-ge, se}, {0.0, ye}, {e * s, ce}, false)},
                      {0.0, ye, bulgeAbout({0.0, ye}, {ge, se}, {-e * s, ce}, false)},
                      {ge, se, 0.0},
                      {half_, se, 0.0},
                      {half_, 0.5 * row_.D, 0.0},
                      {-half_, 0.5 * row_.D, 0.0}};
        parts_.rings.push_back(softened(outer, {edge_, 0.0, 0.0, 0.0, edge_, corner_, corner_}));
        parts_.seams.push_back({{0.0, 0.5 * row_.d}, {0.0, yi}});
        ball(0.0);
        outsideCage(0.0, -1.0);
        outsideCage(0.0, 1.0);
        for (const double side : {-1.0, 1.0})
            contact({-side * 0.5 * Dw_ * s, Rp_ + 0.5 * Dw_ * c}, side * Rp_ * std::tan(alpha));
    }

    void selfAligning()
    {
        const double x = 0.5 * rowDistance(row_.W - 1.03 * Dw_), alpha = std::atan2(x, Rp_), reach = std::hypot(x, Rp_);
        const double Rs = reach + 0.5 * Dw_, rho = 0.53 * Dw_, c = std::cos(alpha), s = std::sin(alpha);
        const double centre = reach - 0.5 * Dw_ + rho;
        const double level = centre * c - rho + 0.15 * Dw_;
        sphereRing(Rs);
        Groove right{{centre * s, centre * c}, rho, level, level};
        if (right.leftX() > 0.0) {
            Groove left = right;
            left.centre.x = -left.centre.x;
            innerRing({left, right});
        } else { // the grooves run into each other
            const double y = right.centre.y - chordHalf(rho, right.centre.x), g = right.rightX();
            const Contour inner{{-half_, 0.5 * row_.d, 0.0},
                                {half_, 0.5 * row_.d, 0.0},
                                {half_, level, 0.0},
                                {g, level, bulgeAbout({g, level}, {0.0, y}, right.centre, false)},
                                {0.0, y, bulgeAbout({0.0, y}, {-g, level}, {-right.centre.x, right.centre.y}, false)},
                                {-g, level, 0.0},
                                {-half_, level, 0.0}};
            parts_.rings.push_back(softened(inner, {corner_, corner_, edge_, 0.0, 0.0, 0.0, edge_}));
        }
        for (const double side : {-1.0, 1.0}) {
            if (cage_ && half_ - 0.45 * Dw_ - x > 0.0)
                parts_.black.push_back(rectangle(side > 0.0 ? x + 0.42 * Dw_ : -half_, Rp_ - 0.09 * Dw_,
                                                 side > 0.0 ? half_ : -x - 0.42 * Dw_, Rp_ + 0.09 * Dw_));
        }
        ball(x);
        ball(-x); // the front row hides a sliver of the other
        for (const double side : {-1.0, 1.0})
            parts_.contacts.push_back({{side * Rs * s, Rs * c}, {0.0, 0.0}});
        parts_.effective.push_back(0.0);
    }

    void sphereRing(double sphere)
    {
        const double y = chordHalf(sphere, half_);
        const Contour outer{{-half_, y, bulgeAbout({-half_, y}, {half_, y}, {0.0, 0.0}, false)},
                            {half_, y, 0.0},
                            {half_, 0.5 * row_.D, 0.0},
                            {-half_, 0.5 * row_.D, 0.0}};
        parts_.rings.push_back(softened(outer, {0.0, 0.0, corner_, corner_}));
    }

    // --- roller bearings ---

    /// Relief at the corner of raceway and rib: three quarters of a circle cut into the material.
    void relief(Contour& contour, Point before, Point corner, Point after) const
    {
        const double r = 0.045 * Dw_;
        if (!full_) {
            contour.push_back({corner.x, corner.y, 0.0});
            return;
        }
        const auto towards = [&](Point to) {
            const double length = std::hypot(to.x - corner.x, to.y - corner.y);
            return Point{corner.x + r * (to.x - corner.x) / length, corner.y + r * (to.y - corner.y) / length};
        };
        const Point from = towards(before), to = towards(after);
        contour.push_back({from.x, from.y, bulgeAbout(from, to, corner, false)});
        contour.push_back({to.x, to.y, 0.0});
    }

    void cylindrical()
    {
        const double L = rollerLength(0.66 * row_.W), l = 0.5 * L, rib = 0.22 * Dw_;
        const double Ri = Rp_ - 0.5 * Dw_, Re = Rp_ + 0.5 * Dw_;
        const Ribs& ribs = row_.ribs;
        const double plainEdge = full_ ? -0.48 * corner_ : 0.0;

        // Inner ring, along the raceway from right to left.
        const double innerRight = ribs.loose_inner_right ? l : half_;
        Contour inner{{-half_, 0.5 * row_.d, 0.0}, {innerRight, 0.5 * row_.d, 0.0}};
        std::vector<double> values{corner_, ribs.loose_inner_right ? 0.0 : corner_};
        const auto fill = [](std::vector<double>& list, std::size_t size) { list.resize(size, 0.0); };
        if (ribs.inner_right) {
            inner.push_back({half_, Ri + rib, 0.0});
            values.push_back(edge_);
            inner.push_back({l, Ri + rib, 0.0});
            relief(inner, {l, Ri + rib}, {l, Ri}, {0.0, Ri});
        } else {
            inner.push_back({innerRight, Ri, 0.0});
            values.push_back(ribs.loose_inner_right ? 0.0 : plainEdge);
        }
        fill(values, inner.size());
        if (ribs.inner_left) {
            relief(inner, {0.0, Ri}, {-l, Ri}, {-l, Ri + rib});
            inner.push_back({-l, Ri + rib, 0.0});
            inner.push_back({-half_, Ri + rib, 0.0});
            fill(values, inner.size());
            values.back() = edge_;
        } else {
            inner.push_back({-half_, Ri, 0.0});
            values.push_back(plainEdge);
        }
        parts_.rings.push_back(softened(inner, values));
        if (ribs.loose_inner_right)
            parts_.other.push_back(softened(rectangle(l, 0.5 * row_.d, half_, Ri + rib), {0.0, corner_, edge_, 0.0}));

        // Outer ring, along the raceway from left to right.
        Contour outer;
        std::vector<double> outerValues;
        if (ribs.outer_left) {
            outer.push_back({-half_, Re - rib, 0.0});
            outerValues.push_back(edge_);
            outer.push_back({-l, Re - rib, 0.0});
            relief(outer, {-l, Re - rib}, {-l, Re}, {0.0, Re});
        } else {
            outer.push_back({-half_, Re, 0.0});
            outerValues.push_back(plainEdge);
        }
        if (ribs.outer_right) {
            relief(outer, {0.0, Re}, {l, Re}, {l, Re - rib});
            outer.push_back({l, Re - rib, 0.0});
            outer.push_back({half_, Re - rib, 0.0});
            fill(outerValues, outer.size());
            outerValues.back() = edge_;
        } else {
            outer.push_back({half_, Re, 0.0});
            fill(outerValues, outer.size());
            outerValues.back() = plainEdge;
        }
        outer.push_back({half_, 0.5 * row_.D, 0.0});
        outer.push_back({-half_, 0.5 * row_.D, 0.0});
        outerValues.push_back(corner_);
        outerValues.push_back(corner_);
        parts_.rings.push_back(softened(outer, outerValues));

        if (row_.geometry_class == GeometryClass::cylindrical_roller_full) {
            // Full complement, no cage: a snap ring keeps the rollers in on the side without a rib.
            if (!ribs.outer_left)
                parts_.black.push_back(rectangle(-l - 0.75 * (half_ - l), Re - 0.16 * Dw_, -l - 0.25 * (half_ - l), Re));
        } else {
            const double x0 = l + 0.05 * Dw_, x1 = 0.465 * row_.W;
            const int inners = int(ribs.inner_left) + int(ribs.inner_right || ribs.loose_inner_right);
            const int outers = int(ribs.outer_left) + int(ribs.outer_right);
            double low = -0.21, high = 0.21;
            if (inners == 0)
                low = -0.30, high = 0.20;
            else if (outers == 0)
                low = -0.20, high = 0.30;
            cageBox(-x1, Rp_ + low * Dw_, -x0, Rp_ + high * Dw_);
            cageBox(x0, Rp_ + low * Dw_, x1, Rp_ + high * Dw_);
        }
        roller(rectangle(-l, Ri, l, Re), 0.07 * Dw_, {0.0, Rp_}, l + 0.12 * Dw_, 0.62 * Dw_, 0.0);
        radialContact(0.0);
    }

    [[nodiscard]] double rollerLength(double otherwise) const
    {
        double L = row_.inside.roller_length_mm;
        if (!(L > 0.0))
            L = row_.inside.effective_length_mm > 0.0 ? row_.inside.effective_length_mm / 0.95 : otherwise;
        return std::min(L, 0.9 * row_.W);
    }

    void needle()
    {
        const int rows = row_.inside.rows == 2 ? 2 : 1;
        const double Ri = 0.5 * row_.inner_raceway, Re = Ri + Dw_, l = 0.375 * row_.W, rib = 0.28 * Dw_;
        if (row_.inner_ring) {
            parts_.rings.push_back(softened(rectangle(-half_, 0.5 * row_.d, half_, Ri),
                                            {corner_, corner_, full_ ? -0.48 * corner_ : 0.0, full_ ? -0.48 * corner_ : 0.0}));
        }
        const Contour outer{{-half_, Re - rib, 0.0},
                            {-l, Re - rib, 0.0},
                            {-l, Re, 0.0},
                            {l, Re, 0.0},
                            {l, Re - rib, 0.0},
                            {half_, Re - rib, 0.0},
                            {half_, 0.5 * row_.D, 0.0},
                            {-half_, 0.5 * row_.D, 0.0}};
        parts_.rings.push_back(softened(outer, {edge_, 0.0, 0.0, 0.0, 0.0, edge_, corner_, corner_}));
        if (cage_) {
            cageBox(-l - 0.55 * (half_ - l), Rp_ - 0.30 * Dw_, -l, Rp_ + 0.15 * Dw_);
            cageBox(l, Rp_ - 0.30 * Dw_, l + 0.55 * (half_ - l), Rp_ + 0.15 * Dw_);
        }
        if (rows == 2) {
            const double gap = 0.02 * row_.W;
            cageBox(-gap, Rp_ - 0.15 * Dw_, gap, Rp_ + 0.15 * Dw_);
            for (const double side : {-1.0, 1.0}) {
                const double x0 = side > 0.0 ? gap : -l, x1 = side > 0.0 ? l : -gap, m = 0.5 * (x0 + x1);
                roller(rectangle(x0, Ri, x1, Re), 0.12 * Dw_, {m, Rp_}, 0.5 * (x1 - x0) + 0.1 * Dw_, 0.7 * Dw_, 0.0);
                radialContact(m);
            }
        } else {
            roller(rectangle(-l, Ri, l, Re), 0.12 * Dw_, {0.0, Rp_}, l + 0.3 * Dw_, 0.75 * Dw_, 0.0);
            radialContact(0.0);
        }
    }

    void drawnCup()
    {
        const double Ri = 0.5 * row_.inner_raceway, Re = Ri + Dw_, R = 0.5 * row_.D, t = R - Re;
        const double lip = std::min(Ri + 0.22 * Dw_, Re - 0.1 * Dw_);
        const Contour shell{{-half_, lip, 0.0},    {-half_ + t, lip, 0.0}, {-half_ + t, Re, 0.0}, {half_ - t, Re, 0.0},
                            {half_ - t, lip, 0.0}, {half_, lip, 0.0},      {half_, R, 0.0},       {-half_, R, 0.0}};
        const double outside = std::min(1.6 * t, 0.6 * (R - lip)), inside = 0.4 * outside;
        parts_.rings.push_back(softened(shell, {0.0, 0.0, inside, inside, 0.0, 0.0, outside, outside}));
        parts_.thinnest = t;
        const double L =
            std::min(row_.inside.effective_length_mm > 0.0 ? row_.inside.effective_length_mm : 0.75 * row_.W, row_.W - 2.6 * t);
        const double l = 0.5 * L, gap = half_ - t - l;
        if (gap > 0.05 * row_.W) {
            cageBox(-l - 0.75 * gap, Rp_ - 0.22 * Dw_, -l, Rp_ + 0.12 * Dw_);
            cageBox(l, Rp_ - 0.22 * Dw_, l + 0.75 * gap, Rp_ + 0.12 * Dw_);
        }
        roller(rectangle(-l, Ri, l, Re), 0.12 * Dw_, {0.0, Rp_}, l + 0.3 * Dw_, 0.75 * Dw_, 0.0);
        radialContact(0.0);
    }

    /// Built with the cup's back face at x = 0 and the effective centre towards +x, as ISO 355 draws it; then turned round
    /// (canonical: effective centre left) and centred on T / 2.
    void tapered()
    {
        const double T = row_.W, B = row_.cone_width, C = row_.cup_width, d = row_.d, D = row_.D, S = D - d;
        const double alpha = row_.inside.contact_angle_rad, t = std::tan(alpha);
        const double E = row_.cup_small_end > 0.0 ? row_.cup_small_end : 2.0 * (0.5 * D - 0.1175 * S - 0.5 * C * t);
        const double apex = -0.5 * E / t;
        const double L = std::min(row_.inside.roller_length_mm > 0.0 ? row_.inside.roller_length_mm : 0.86 * C / std::cos(alpha),
                                  0.95 * C / std::cos(alpha));
        const double rem = std::max(B - L * std::cos(alpha), 0.0);
        // Steep rollers stay behind the cup's back face.
        const double xs = std::max(T - B + 0.34 * rem - 0.5 * Dw_ * std::sin(alpha), 0.5 * Dw_ * std::sin(alpha));
        const double xm = xs + 0.5 * L * std::cos(alpha), Lm = (xm - apex) / std::cos(alpha);
        const double nu = std::asin(std::clamp(0.5 * Dw_ / Lm, 0.0, 0.5)), gamma = alpha - nu;
        const double cg = std::cos(gamma), sg = std::sin(gamma), tn = std::tan(nu);
        const auto at = [&](double s, double off) {
            return Point{apex + s * cg - off * sg, s * sg + off * cg};
        }; // off: normal, mm
        const auto P = [&](double s, double k) { return at(s, k * s * tn); };
        const auto V = [](Point p) { return Vertex{p.x, p.y, 0.0}; };
        const double s1 = (xs - apex) / cg, s2 = s1 + L;

        std::vector<Contour> rings, rollers, black;
        // Cone, along the raceway from the big end to the small end.
        const Point big = P(s2, -1.0), ribTop = at(s2, -s2 * tn + 0.32 * Dw_);
        Contour cone{{T - B, 0.5 * d, 0.0}, {T, 0.5 * d, 0.0}, {T, ribTop.y, 0.0}, V(ribTop)};
        std::vector<double> values{corner_, corner_, edge_};
        const Point small = P(s1 - 0.03 * Dw_, -1.0);
        const Point smallTop = at(s1 - 0.03 * Dw_, -(s1 - 0.03 * Dw_) * tn + 0.13 * Dw_);
        relief(cone, ribTop, big, small);
        if (smallTop.x > T - B + 0.02 * B) {
            relief(cone, big, small, smallTop);
            cone.push_back(V(smallTop));
            cone.push_back({T - B, smallTop.y, 0.0});
        } else {                                              // no room for the small rib: the raceway runs out into the face
            const double s = (T - B - apex) / (cg + tn * sg); // where P(s, -1).x = T - B
            cone.push_back({T - B, P(s, -1.0).y, 0.0});
        }
        values.resize(cone.size(), 0.0);
        rings.push_back(softened(cone, values));
        const Contour cup{{0.0, 0.5 * E, 0.0}, {C, 0.5 * E + C * t, 0.0}, {C, 0.5 * D, 0.0}, {0.0, 0.5 * D, 0.0}};
        const double thinCup = 0.5 * D - 0.5 * E - C * t;
        rings.push_back(softened(cup, {edge_, 0.0, std::min(corner_, 0.5 * thinCup), corner_}));
        const double thinCone = std::min(small.y, big.y) - 0.5 * d;
        parts_.thinnest = std::max(std::min(thinCup, thinCone) * 1.6, 0.25 * row_.section());

        const Contour body{V(P(s1, -1.0)), V(P(s2, -1.0)), V(P(s2, 1.0)), V(P(s1, 1.0))};
        rollers.push_back(softened(body, std::vector<double>(4, 0.06 * Dw_)));
        if (cage_) {
            // One pressed strip, turned in at the small end; the roller covers its middle.
            const double from = std::max(s1 - 0.16 * Dw_, (0.05 * Dw_ - apex + 0.28 * Dw_ * sg) / cg), to = s2 + 0.12 * Dw_;
            if (from < s1 - 0.05 * Dw_) {
                const double web = std::min(0.08 * Dw_, s1 - from);
                black.push_back({V(at(from, -0.20 * Dw_)), V(at(from + web, -0.20 * Dw_)), V(at(from + web, 0.20 * Dw_)),
                                 V(at(to, 0.20 * Dw_)), V(at(to, 0.28 * Dw_)), V(at(from, 0.28 * Dw_))});
            }
        }
        const auto turned = [&](Contour contour) {
            return mirroredAtCentre(scaledAndMoved(std::move(contour), 1.0, -half_, 0.0));
        };
        for (Contour& contour : rings)
            parts_.rings.push_back(turned(std::move(contour)));
        for (Contour& contour : black)
            parts_.black.push_back(turned(std::move(contour)));
        for (Contour& contour : rollers)
            parts_.rollers.push_back(turned(std::move(contour)));
        const Point middle = at(0.5 * (s1 + s2), 0.0);
        parts_.crosses.push_back({{half_ - middle.x, middle.y}, 0.5 * L + 0.15 * Dw_, 0.65 * Dw_, -gamma});
        const double effective = row_.effective_from_back - half_; // before turning, from the middle
        contact({half_ - xm, 0.5 * E + xm * t}, -effective);
    }

    /// Barrel between spheres about the origin of the row: axis normal to the contact line at `alpha` from the radial plane.
    struct Barrel {
        Point middle, along, out; ///< centre, unit vectors of its axis (to the right) and outwards
        double reach = 0.0;       ///< of the middle from the pressure centre
        Point pressure;           ///< centre of the outer sphere
        double sphere = 0.0, half_length = 0.0, half_end = 0.0;
        [[nodiscard]] Point at(double s, double u) const
        {
            return {middle.x + s * along.x + u * out.x, middle.y + s * along.y + u * out.y};
        }
        [[nodiscard]] Point mirror() const { return at(0.0, reach); } ///< centre of the inner profile
    };

    static Contour barrelContour(const Barrel& b)
    {
        const Point ul = b.at(-b.half_length, b.half_end), ur = b.at(b.half_length, b.half_end);
        const Point ll = b.at(-b.half_length, -b.half_end), lr = b.at(b.half_length, -b.half_end);
        return {{ul.x, ul.y, bulgeAbout(ul, ur, b.pressure, false)},
                {ur.x, ur.y, 0.0},
                {lr.x, lr.y, bulgeAbout(lr, ll, b.mirror(), false)},
                {ll.x, ll.y, 0.0}};
    }

    void spherical()
    {
        const double B = row_.W;
        const double x = 0.5 * (row_.inside.row_distance_mm > 0.0 ? std::min(row_.inside.row_distance_mm, 0.49 * B) : 0.49 * B);
        const double alpha = std::atan2(x, Rp_), c = std::cos(alpha), s = std::sin(alpha), reach = Rp_ / c;
        const double L = std::min(0.42 * B, (2.0 * x - 0.04 * B - 0.92 * Dw_ * s) / c);
        Barrel right{{x, Rp_}, {c, -s}, {s, c}, reach, {0.0, 0.0}, reach + 0.5 * Dw_, 0.5 * L, 0.0};
        right.half_end = chordHalf(right.sphere, right.half_length) - reach;
        sphereRing(right.sphere);
        // Inner ring, from the right face to the left.
        const Point outEnd = right.at(right.half_length, -right.half_end), inEnd = right.at(-right.half_length, -right.half_end);
        const Point ribTop = right.at(right.half_length, -right.half_end + 0.12 * Dw_);
        Contour inner{{-half_, 0.5 * row_.d, 0.0}, {half_, 0.5 * row_.d, 0.0}};
        std::vector<double> values{corner_, corner_};
        const bool rib = ribTop.x < half_ - 0.01 * B;
        if (rib) {
            inner.push_back({half_, ribTop.y, 0.0});
            inner.push_back({ribTop.x, ribTop.y, 0.0});
        } else {
            inner.push_back({half_, outEnd.y, 0.0});
        }
        const double bulge = bulgeAbout(outEnd, inEnd, right.mirror(), false);
        inner.push_back({outEnd.x, outEnd.y, bulge});
        inner.push_back({inEnd.x, inEnd.y, 0.0});
        inner.push_back({-inEnd.x, inEnd.y, bulge});
        inner.push_back({-outEnd.x, outEnd.y, 0.0});
        if (rib) {
            inner.push_back({-ribTop.x, ribTop.y, 0.0});
            inner.push_back({-half_, ribTop.y, 0.0});
        } else {
            inner.push_back({-half_, outEnd.y, 0.0});
        }
        values.resize(inner.size(), 0.0);
        parts_.rings.push_back(softened(inner, values));
        // Guide ring between the rows.
        const Point guideTop = right.at(-right.half_length, -right.half_end + 0.4 * Dw_);
        if (inEnd.x > 0.0)
            parts_.other.push_back({{-inEnd.x, inEnd.y, 0.0},
                                    {inEnd.x, inEnd.y, 0.0},
                                    {guideTop.x, guideTop.y, 0.0},
                                    {-guideTop.x, guideTop.y, 0.0}});
        const Contour body = barrelContour(right);
        parts_.rollers.push_back(body);
        parts_.rollers.push_back(mirroredAtCentre(body));
        for (const double side : {-1.0, 1.0}) {
            parts_.crosses.push_back({{side * x, Rp_}, 0.5 * L + 0.1 * Dw_, 0.62 * Dw_, -side * alpha});
            parts_.contacts.push_back({{side * right.sphere * s, right.sphere * c}, {0.0, 0.0}});
        }
        parts_.effective.push_back(0.0);
        if (cage_) {
            const double from = right.half_length + 0.02 * Dw_;
            const double to = std::min(from + 0.12 * Dw_, (0.985 * half_ - x - 0.14 * Dw_ * s) / c);
            if (to - from > 0.03 * Dw_) {
                Contour piece;
                for (const auto& [along, out] : {std::pair{from, -0.14}, {to, -0.14}, {to, 0.14}, {from, 0.14}}) {
                    const Point p = right.at(along, out * Dw_);
                    piece.push_back({p.x, p.y, 0.0});
                }
                parts_.cages.push_back(piece);
                parts_.cages.push_back(mirroredAtCentre(piece));
            }
        }
    }

    // --- axial bearings; shaft washer left ---

    [[nodiscard]] double housingBore() const { return 0.5 * row_.d + std::clamp(0.06 * row_.section(), 0.5, 2.5); }

    void thrustBall()
    {
        const double face = 0.25 * Dw_, rho = 0.54 * Dw_, centre = rho - 0.5 * Dw_, g = chordHalf(rho, face + centre);
        const double R = 0.5 * row_.D, low = housingBore();
        const Contour shaftWasher{{-half_, 0.5 * row_.d, 0.0},
                                  {-face, 0.5 * row_.d, 0.0},
                                  {-face, Rp_ - g, bulgeAbout({-face, Rp_ - g}, {-face, Rp_ + g}, {centre, Rp_}, false)},
                                  {-face, Rp_ + g, 0.0},
                                  {-face, R, 0.0},
                                  {-half_, R, 0.0}};
        parts_.rings.push_back(softened(shaftWasher, {corner_, edge_, 0.0, 0.0, edge_, corner_}));
        const Contour housingWasher{{face, low, 0.0},
                                    {half_, low, 0.0},
                                    {half_, R, 0.0},
                                    {face, R, 0.0},
                                    {face, Rp_ + g, bulgeAbout({face, Rp_ + g}, {face, Rp_ - g}, {-centre, Rp_}, false)},
                                    {face, Rp_ - g, 0.0}};
        parts_.rings.push_back(softened(housingWasher, {edge_, corner_, corner_, edge_, 0.0, 0.0}));
        parts_.thinnest = half_ - 0.5 * Dw_;
        thrustCage(0.0, 0.5 * Dw_);
        ball(0.0);
        parts_.contacts.push_back({{-0.7 * Dw_, Rp_}, {0.7 * Dw_, Rp_}});
    }

    void thrustCage(double x, double reach)
    {
        const double w = 0.13 * Dw_;
        const double top = std::min(Rp_ + reach + 0.14 * Dw_, 0.5 * row_.D),
                     bottom = std::max(Rp_ - reach - 0.14 * Dw_, 0.5 * row_.d);
        cageBox(x - w, Rp_ + reach - 0.1 * Dw_, x + w, top);
        cageBox(x - w, bottom, x + w, Rp_ - reach + 0.1 * Dw_);
    }

    void thrustBallDouble()
    {
        const double depth = 0.25 * Dw_, gap = 2.0 * (0.5 * Dw_ - depth), rho = 0.54 * Dw_;
        const double rest = row_.W - 2.0 * gap;
        const double middle = std::max(0.34 * (row_.W - Dw_), 2.0 * depth + 0.1 * Dw_); // centre washer
        const double m = 0.5 * middle, xb = m + 0.5 * gap, face = m + gap;
        if (rest - middle < 2.0 * depth)
            return; // no room: outline and sign
        const double centre = rho - 0.5 * Dw_, g = chordHalf(rho, 0.5 * gap + centre);
        // The centre washer sits on the shaft, the housing washers clear it.
        const double R = 0.5 * row_.D,
                     clear = std::min(std::max(0.5 * row_.d + 0.18 * row_.section(), housingBore()), Rp_ - g - 0.05 * Dw_);
        const double top = std::min(R, 2.0 * Rp_ - clear + 0.06 * Dw_);
        const auto arc = [&](double x, double from, double to, double cx) {
            return bulgeAbout({x, from}, {x, to}, {cx, Rp_}, false);
        };
        const Contour washer{{-m, 0.5 * row_.d, 0.0},
                             {m, 0.5 * row_.d, 0.0},
                             {m, Rp_ - g, -arc(m, Rp_ + g, Rp_ - g, xb - centre)},
                             {m, Rp_ + g, 0.0},
                             {m, top, 0.0},
                             {-m, top, 0.0},
                             {-m, Rp_ + g, -arc(-m, Rp_ - g, Rp_ + g, -xb + centre)},
                             {-m, Rp_ - g, 0.0}};
        // Arcs of the centre washer dip into it: seen from the ball they are the near halves of the groove circles.
        Contour centreWasher = washer;
        centreWasher[2].bulge = bulgeAbout({m, Rp_ - g}, {m, Rp_ + g}, {xb + centre, Rp_}, false);
        centreWasher[6].bulge = bulgeAbout({-m, Rp_ + g}, {-m, Rp_ - g}, {-xb - centre, Rp_}, false);
        parts_.other.push_back(softened(centreWasher, {corner_, corner_, 0.0, 0.0, edge_, edge_, 0.0, 0.0}));
        const Contour housing{{face, clear, 0.0},
                              {half_, clear, 0.0},
                              {half_, R, 0.0},
                              {face, R, 0.0},
                              {face, Rp_ + g, bulgeAbout({face, Rp_ + g}, {face, Rp_ - g}, {xb - centre, Rp_}, false)},
                              {face, Rp_ - g, 0.0}};
        const Contour soft = softened(housing, {edge_, corner_, corner_, edge_, 0.0, 0.0});
        parts_.rings.push_back(soft);
        parts_.rings.push_back(mirroredAtCentre(soft));
        parts_.thinnest = std::min(half_ - face - depth, middle - 2.0 * depth);
        for (const double side : {-1.0, 1.0}) {
            thrustCage(side * xb, 0.5 * Dw_);
            ball(side * xb);
        }
    }

    void thrustRoller()
    {
        const double l = 0.5 * std::min(rollerLengthThrust(), 0.8 * row_.section()), R = 0.5 * row_.D, low = housingBore();
        const double face = 0.5 * Dw_;
        parts_.rings.push_back(softened(rectangle(-half_, 0.5 * row_.d, -face, R), {corner_, edge_, edge_, corner_}));
        parts_.rings.push_back(softened(rectangle(face, low, half_, R), {edge_, corner_, corner_, edge_}));
        parts_.thinnest = half_ - face;
        thrustCage(0.0, l);
        roller(rectangle(-face, Rp_ - l, face, Rp_ + l), 0.06 * Dw_, {0.0, Rp_}, 0.62 * Dw_, l + 0.25 * Dw_, 0.0);
    }
    [[nodiscard]] double rollerLengthThrust() const
    {
        if (row_.inside.roller_length_mm > 0.0)
            return row_.inside.roller_length_mm;
        return row_.inside.effective_length_mm > 0.0 ? row_.inside.effective_length_mm : 0.6 * row_.section();
    }

    /// Needles in a cage that is its own bearing: no washers.
    void thrustNeedle()
    {
        const double l = 0.5 * std::min(rollerLengthThrust(), 0.8 * row_.section()), w = 0.42 * row_.W, face = 0.5 * row_.W;
        const double inset = 0.35 * Dw_;
        parts_.cages.push_back(rectangle(-w, 0.5 * row_.d, w, Rp_ - l));
        parts_.cages.push_back(rectangle(-w, Rp_ + l, w, 0.5 * row_.D));
        parts_.thinnest = row_.W;
        parts_.rollers.push_back(
            softened(rectangle(-face, Rp_ - l, face, Rp_ + l), std::vector<double>(4, std::min(0.12 * Dw_, inset))));
        parts_.crosses.push_back({{0.0, Rp_}, 0.8 * face, l + 0.2 * Dw_, 0.0});
    }

    void thrustSpherical()
    {
        const double alpha = row_.inside.contact_angle_rad > 0.5 && row_.inside.contact_angle_rad < 1.3
                                 ? row_.inside.contact_angle_rad
                                 : 50.0 * pi / 180.0;
        const double c = std::cos(alpha), s = std::sin(alpha), H = row_.W, R = 0.5 * row_.D, S = row_.D - row_.d;
        const double reach = Rp_ / c, L = std::min(rollerLengthThrust(), 0.62 * H);
        Barrel b{{0.0, Rp_}, {c, -s}, {s, c}, reach, {-Rp_ * std::tan(alpha), 0.0}, reach + 0.5 * Dw_, 0.5 * L, 0.0};
        // The roller's axis leans to the right going inwards; its outer end is the large one.
        b.half_end = chordHalf(b.sphere, b.half_length) - reach;
        const double rHigh = R - 0.045 * S, xHigh = b.pressure.x + chordHalf(b.sphere, rHigh);
        const double xLow = 0.4 * H, rLow = chordHalf(b.sphere, xLow - b.pressure.x);
        const Contour housing{{half_, rLow, 0.0},
                              {half_, R, 0.0},
                              {xHigh, R, 0.0},
                              {xHigh, rHigh, bulgeAbout({xHigh, rHigh}, {xLow, rLow}, b.pressure, false)},
                              {xLow, rLow, 0.0}};
        parts_.rings.push_back(softened(housing, {edge_, corner_, edge_, 0.0, 0.0}));
        // Shaft washer: raceway under the barrel from its inner (right) end to the outer (left) end, then the guiding rib.
        const Point innerEnd = b.at(b.half_length, -b.half_end), outerEnd = b.at(-b.half_length, -b.half_end);
        const Point ribTop = b.at(-b.half_length, -b.half_end + 0.42 * Dw_);
        const double right = std::min(std::max(innerEnd.x + 0.06 * H, 0.1 * H), half_);
        Contour shaftWasher{
            {-half_, 0.5 * row_.d, 0.0},   {right, 0.5 * row_.d, 0.0},
            {right, innerEnd.y, 0.0},      {innerEnd.x, innerEnd.y, bulgeAbout(innerEnd, outerEnd, b.mirror(), false)},
            {outerEnd.x, outerEnd.y, 0.0}, {ribTop.x, ribTop.y, 0.0},
            {-half_, ribTop.y, 0.0}};
        parts_.rings.push_back(softened(shaftWasher, {corner_, edge_, 0.0, 0.0, 0.0, edge_, edge_}));
        parts_.thinnest = 0.3 * row_.section();
        parts_.rollers.push_back(barrelContour(b));
        parts_.crosses.push_back({b.middle, 0.5 * L + 0.12 * Dw_, 0.62 * Dw_, -alpha});
        contact(b.at(0.0, 0.5 * Dw_), b.pressure.x);
    }

    const RowDimensions& row_;
    double Dw_, Rp_, half_;
    bool full_ = false, cage_ = false;
    double corner_ = 0.0, edge_ = 0.0;
    RowParts parts_;
};

/// Everything finite and inside the boundary dimensions.
bool fits(const RowParts& parts, const RowDimensions& row)
{
    const double slack = 1e-6 * row.D;
    const double low = row.geometry_class == GeometryClass::needle && !row.inner_ring ? 0.5 * row.inner_raceway : 0.5 * row.d;
    Bounds bounds;
    for (const std::vector<Contour>* list : {&parts.rings, &parts.other, &parts.cages, &parts.black, &parts.rollers}) {
        for (const Contour& contour : *list) {
            for (const Vertex& vertex : contour) {
                if (!std::isfinite(vertex.x) || !std::isfinite(vertex.y) || !std::isfinite(vertex.bulge))
                    return false;
            }
            bounds.add(contour, true);
        }
    }
    for (const RowParts::Ball& ball : parts.balls) {
        bounds.add(ball.centre.x - ball.radius, ball.centre.y - ball.radius);
        bounds.add(ball.centre.x + ball.radius, ball.centre.y + ball.radius);
    }
    return !bounds.empty() && bounds.x_low >= -0.5 * row.W - slack && bounds.x_high <= 0.5 * row.W + slack &&
           bounds.y_low >= low - slack && bounds.y_high <= 0.5 * row.D + slack;
}

} // namespace

bool drawRow(SectionBuilder& builder, const RowDimensions& row, const Hatching& ring, const Hatching& other)
{
    RowDrawer drawer(builder, row);
    drawer.build();
    const RowParts& parts = drawer.parts();
    if ((parts.balls.empty() && parts.rollers.empty()) || !fits(parts, row))
        return false;

    Hatching rings = ring, others = other, cages = other;
    rings.spacing_mm = others.spacing_mm = builder.spacingFor_mm(parts.thinnest);
    cages.spacing_mm = 0.5 * rings.spacing_mm;
    if (!parts.rings.empty())
        builder.cut(parts.rings, rings);
    if (!parts.other.empty())
        builder.cut(parts.other, others);
    for (const auto& [from, to] : parts.seams)
        builder.line(from, to, Stroke::thick);
    for (const Contour& cage : parts.cages) {
        // Thin sections are filled: hatching of a cage below 2 mm would run together.
        Bounds bounds;
        bounds.add(cage, true);
        if (builder.onSheet_mm(std::min(bounds.x_high - bounds.x_low, bounds.y_high - bounds.y_low)) < 1.6)
            builder.solid(cage);
        else
            builder.cut({cage}, cages);
    }
    for (const Contour& contour : parts.black)
        builder.solid(contour);
    for (const Contour& roller : parts.rollers)
        builder.white(roller);
    for (const RowParts::Ball& ball : parts.balls)
        builder.circle(ball.centre, ball.radius);
    if (builder.style().detail >= Detail::section) {
        for (const RowParts::Cross& cross : parts.crosses)
            builder.cross(cross.centre, cross.along, cross.across, cross.angle);
    }
    if (builder.style().contact_lines || builder.style().quiet_contact_lines) {
        // Unselected in the upper half only: below the axis stand the diameters.
        const Ink ink = builder.style().contact_lines ? Ink::live : Ink::ink2;
        for (const auto& [from, to] : parts.contacts)
            builder.line(from, to, Stroke::phantom, builder.style().contact_lines ? Half::both : Half::upper, ink);
        for (const double x : parts.effective)
            builder.axisMark(x, 2.2, ink);
    }
    return true;
}

void drawBush(SectionBuilder& builder, double bore_mm, double outer_mm, double width_mm, double liner_mm,
              const Hatching& hatching)
{
    const double h = 0.5 * width_mm, r = 0.5 * bore_mm, R = 0.5 * outer_mm, wall = R - r;
    const double outside = -std::min({0.35 * wall, 0.12 * width_mm, 1.5}),
                 inside = -std::min({0.15 * wall, 0.05 * width_mm, 0.5});
    const bool chamfers = builder.style().detail >= Detail::section && builder.onSheet_mm(-outside) > 0.3;
    const double shell = liner_mm > 0.0 && liner_mm < 0.6 * wall ? r + liner_mm : r;
    Hatching own = hatching;
    own.spacing_mm = builder.spacingFor_mm(wall);
    const Contour wallContour = rectangle(-h, shell, h, R);
    const std::vector<double> values{shell == r ? inside : 0.0, shell == r ? inside : 0.0, outside, outside};
    builder.cut({chamfers ? softened(wallContour, values) : wallContour}, own);
    if (shell > r)
        builder.solid(rectangle(-h, r, h, shell));
}

} // namespace shaftwright::drawing
