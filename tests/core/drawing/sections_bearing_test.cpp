#include "core/catalogue/catalogue.h"
#include "core/drawing/sections.h"
#include "tests/core/drawing/sections_geometry.h"

#include <catch2/catch.hpp>

#include <limits>
#include <map>

using namespace shaftwright;
using namespace shaftwright::drawing;
using namespace sections_geometry;
using Catch::Matchers::WithinAbs;

namespace
{

BearingChoice choiceOf(const CatalogueRow& row)
{
    BearingChoice choice;
    choice.family = row.geometry_class == GeometryClass::needle ? Family::needle_roller : Family::deep_groove_ball;
    choice.rows.push_back({row, {}});
    return choice;
}

/// What a drawn bearing consists of, upper half.
struct Drawn {
    std::vector<Polygon> rings, all;
    std::vector<Polygon> elements;
    bool closed = true, hatched = false;
};

Drawn upperHalf(const Group& group)
{
    Drawn out;
    double widest = 0.0;
    for (const Primitive& item : group.items) {
        if (const auto* hatch = std::get_if<Hatch>(&item))
            widest = std::max(widest, hatch->spacing_mm);
    }
    for (const Primitive& item : group.items) {
        if (const auto* hatch = std::get_if<Hatch>(&item)) {
            out.hatched = true;
            for (const auto& contour : hatch->contours) {
                // Cages are hatched at half the spacing; the elements lie before them and cover them.
                if (middleY(contour) > 0.0 && hatch->spacing_mm > 0.6 * widest)
                    out.rings.push_back(polygonOf(contour));
            }
        } else if (const auto* path = std::get_if<Path>(&item)) {
            if (path->fill && !path->closed)
                out.closed = false;
            if (!path->closed || middleY(path->vertices) < 0.0)
                continue;
            out.all.push_back(polygonOf(path->vertices));
            if (path->fill == Ink::paper && path->stroke == Stroke::thick)
                out.elements.push_back(out.all.back());
        } else if (const auto* circle = std::get_if<Circle>(&item)) {
            if (circle->y < 0.0)
                continue;
            Polygon polygon;
            for (int k = 0; k < 180; ++k) {
                const double t = k * 3.14159265358979323846 / 90.0;
                polygon.push_back({circle->x + circle->radius * std::cos(t), circle->y + circle->radius * std::sin(t)});
            }
            out.all.push_back(polygon);
            out.elements.push_back(polygon);
        }
    }
    return out;
}

/// Sums that a mirrored half shares, sorted.
std::vector<std::array<double, 3>> fingerprints(const Group& group, bool upper)
{
    std::vector<std::array<double, 3>> out;
    for (const Primitive& item : group.items) {
        if (const auto* path = std::get_if<Path>(&item)) {
            const double y = middleY(path->vertices);
            if ((y > 0.0) != upper)
                continue;
            std::array<double, 3> sums{0.0, 0.0, 0.0};
            for (const Vertex& vertex : path->vertices) {
                sums[0] += vertex.x;
                sums[1] += upper ? vertex.y : -vertex.y;
                sums[2] += (upper ? 1.0 : -1.0) * vertex.bulge;
            }
            out.push_back(sums);
        } else if (const auto* circle = std::get_if<Circle>(&item)) {
            if ((circle->y > 0.0) == upper)
                out.push_back({circle->x, std::abs(circle->y), circle->radius});
        }
    }
    std::sort(out.begin(), out.end());
    return out;
}

} // namespace

TEST_CASE("every bearing of the generic catalogue has a true section that could be built", "[core][drawing][sections]")
{
    SectionStyle style;
    style.detail = Detail::full_section;
    std::map<GeometryClass, int> seen;
    double deepest = 0.0;
    std::string deepestName;
    for (const CatalogueRow& row : genericCatalogue().rows) {
        INFO(row.designation);
        ++seen[row.geometry_class];
        const Group group = bearingSection(choiceOf(row), {}, style);
        const Drawn drawn = upperHalf(group);
        REQUIRE(drawn.closed);
        REQUIRE(drawn.hatched); // else outline and sign stand for it
        REQUIRE_FALSE(drawn.elements.empty());
        const double half = 0.5 * row.width_mm,
                     inner = 0.5 * std::min(row.bore_mm, row.inner_raceway_mm > 0.0 ? row.inner_raceway_mm : row.bore_mm);
        for (const Polygon& polygon : drawn.all) {
            REQUIRE(polygon.size() >= 3);
            REQUIRE(simple(polygon));
            for (const P& p : polygon) {
                // 1e-6 of the diameter: rounding of the arcs' centres.
                REQUIRE(std::abs(p.x) <= half + 1e-6 * row.outer_mm);
                REQUIRE(p.y >= inner - 1e-6 * row.outer_mm);
                REQUIRE(p.y <= 0.5 * row.outer_mm + 1e-6 * row.outer_mm);
            }
        }
        const double section = 0.5 * (row.outer_mm - row.bore_mm);
        for (const Polygon& element : drawn.elements) {
            for (const Polygon& ring : drawn.rings) {
                for (const P& p : element) {
                    const double share = depth(ring, p) / section;
                    if (share > deepest) {
                        deepest = share;
                        deepestName = row.designation;
                    }
                }
            }
        }
        REQUIRE(fingerprints(group, true).size() == fingerprints(group, false).size());
        const auto up = fingerprints(group, true), down = fingerprints(group, false);
        for (std::size_t i = 0; i < up.size(); ++i) {
            for (std::size_t k = 0; k < 3; ++k)
                REQUIRE(std::abs(up[i][k] - down[i][k]) < 1e-6);
        }
    }
    INFO("deepest " << deepest << " of the half section at " << deepestName);
    // An element touches its ring; 0.2 % of the half section is below the width of a line at any scale.
    CHECK(deepest < 0.002);
    CHECK(seen.size() == 17);
}

TEST_CASE("the level of detail follows the size on the device and holds within fifteen per cent", "[core][drawing][sections]")
{
    CHECK(detailFor(5.0) == Detail::block);
    CHECK(detailFor(10.0) == Detail::general_sign);
    CHECK(detailFor(20.0) == Detail::detailed_sign);
    CHECK(detailFor(30.0) == Detail::tone_section);
    CHECK(detailFor(60.0) == Detail::section);
    CHECK(detailFor(200.0) == Detail::full_section);
    // Bound at 45 px: up at 45 * 1.15 = 51.75, down at 45 * 0.85 = 38.25.
    CHECK(detailFor(51.0, Detail::tone_section) == Detail::tone_section);
    CHECK(detailFor(52.0, Detail::tone_section) == Detail::section);
    CHECK(detailFor(39.0, Detail::section) == Detail::section);
    CHECK(detailFor(38.0, Detail::section) == Detail::tone_section);
    // From far away the level is reached at once.
    CHECK(detailFor(5.0, Detail::full_section) == Detail::block);
    CHECK(detailFor(200.0, Detail::block) == Detail::full_section);
    for (double px = 0.0; px < 300.0; px += 0.5)
        REQUIRE(detailFor(px) <= detailFor(px + 0.5));
}

TEST_CASE("rows of a set lean against each other and show their effective centres", "[core][drawing][sections]")
{
    const CatalogueRow* row = genericCatalogue().find("7208-40");
    REQUIRE(row != nullptr);
    BearingChoice pair;
    pair.family = Family::angular_contact_set_O;
    pair.arrangement = SetArrangement::O;
    pair.rows = {{*row, {}}, {*row, {}}};
    SectionStyle style;
    style.contact_lines = true;
    const auto marks = [&](const BearingChoice& choice) {
        std::vector<double> xs;
        for (const Primitive& item : bearingSection(choice, {}, style).items) {
            const auto* circle = std::get_if<Circle>(&item);
            if (circle != nullptr && circle->y == 0.0)
                xs.push_back(circle->x);
        }
        std::sort(xs.begin(), xs.end());
        return xs;
    };
    // a = B / 2 + (D + d) / 4 tan(alpha) from the outer back face, which lies in the middle of the pair: 9 + 30 tan 40 deg.
    const double a = 9.0 + 30.0 * std::tan(40.0 * 3.14159265358979323846 / 180.0);
    REQUIRE(marks(pair).size() == 2);
    CHECK_THAT(marks(pair)[0], WithinAbs(-a, 1e-9));
    CHECK_THAT(marks(pair)[1], WithinAbs(a, 1e-9));
    // Face-to-face: back faces outside, centres inside.
    pair.arrangement = SetArrangement::X;
    CHECK_THAT(marks(pair)[0], WithinAbs(18.0 - a, 1e-9));
    CHECK_THAT(marks(pair)[1], WithinAbs(a - 18.0, 1e-9));

    std::vector<double> angles;
    for (const Primitive& item : bearingSection(pair, {}, style).items) {
        if (const auto* hatch = std::get_if<Hatch>(&item))
            angles.push_back(hatch->angle_deg);
    }
    CHECK(std::count(angles.begin(), angles.end(), 45.0) > 0);
    CHECK(std::count(angles.begin(), angles.end(), -45.0) > 0);
}

TEST_CASE("a rib bearing turns round with the side it carries", "[core][drawing][sections]")
{
    const CatalogueRow* row = genericCatalogue().find("NJ208");
    if (row == nullptr)
        row = genericCatalogue().find("NU208");
    REQUIRE(row != nullptr);
    BearingChoice one = choiceOf(*row);
    one.rows[0].row.designation = "NJ208";
    SectionStyle style;
    const Group plus = bearingSection(one, Carries::plus, style), minus = bearingSection(one, Carries::minus, style);
    // The inner rib stands left when the shaft is held from moving to +x: more steel below the pitch circle on the left.
    const auto leftmostRib = [](const Group& group) {
        double sum = 0.0;
        for (const Primitive& item : group.items) {
            const auto* hatch = std::get_if<Hatch>(&item);
            if (hatch == nullptr)
                continue;
            const Polygon inner = polygonOf(hatch->contours.front());
            for (std::size_t i = 0; i < inner.size(); ++i) {
                const P a = inner[i], b = inner[(i + 1) % inner.size()];
                sum += (a.x * b.y - b.x * a.y) * (a.x + b.x) / 6.0; // first moment about x = 0
            }
            return sum;
        }
        return sum;
    };
    CHECK(std::abs(leftmostRib(plus)) > 1.0);
    CHECK_THAT(leftmostRib(plus), WithinAbs(leftmostRib(minus), 1e-6)); // mirrored contours run the other way round
    const auto rib = [](const Group& group) {                           // x of the highest point of the inner ring
        for (const Primitive& item : group.items) {
            if (const auto* hatch = std::get_if<Hatch>(&item)) {
                P best{0.0, 0.0};
                for (const Vertex& vertex : hatch->contours.front()) {
                    if (vertex.y > best.y)
                        best = {vertex.x, vertex.y};
                }
                return best.x;
            }
        }
        return 0.0;
    };
    CHECK(rib(plus) < 0.0);
    CHECK(rib(minus) > 0.0);
}

TEST_CASE("typed bearings without an inside are drawn by usual proportions or by their sign", "[core][drawing][sections]")
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (int k = 0; k < 17; ++k) {
        CatalogueRow row;
        row.catalogue = "typed";
        row.designation = "X";
        row.geometry_class = static_cast<GeometryClass>(k);
        for (const auto& [d, D, B] : std::vector<std::array<double, 3>>{{40, 80, 18},
                                                                        {40, 42, 100},
                                                                        {40, 400, 2},
                                                                        {0, 80, 18},
                                                                        {40, 40, 18},
                                                                        {80, 40, 18},
                                                                        {nan, 80, 18},
                                                                        {40, nan, 18},
                                                                        {40, 80, nan},
                                                                        {1e-9, 1e9, 1e9},
                                                                        {-40, 80, -18}}) {
            row.bore_mm = d;
            row.outer_mm = D;
            row.width_mm = B;
            for (const Detail detail : {Detail::block, Detail::general_sign, Detail::detailed_sign, Detail::tone_section,
                                        Detail::section, Detail::full_section}) {
                SectionStyle style;
                style.detail = detail;
                style.contact_lines = true;
                const Group group = bearingSection(choiceOf(row), {}, style);
                INFO(toString(row.geometry_class) << " d " << d << " D " << D << " B " << B);
                for (const double bound : group.bounds)
                    REQUIRE(std::isfinite(bound));
                for (const Primitive& item : group.items) {
                    if (const auto* path = std::get_if<Path>(&item)) {
                        for (const Vertex& vertex : path->vertices)
                            REQUIRE((std::isfinite(vertex.x) && std::isfinite(vertex.y) && std::isfinite(vertex.bulge)));
                    }
                }
                if (d == 40 && D == 80 && B == 18)
                    REQUIRE_FALSE(group.items.empty());
            }
        }
    }
    // A usual one gets a true section.
    CatalogueRow row;
    row.bore_mm = 40;
    row.outer_mm = 80;
    row.width_mm = 18;
    for (const GeometryClass geometry :
         {GeometryClass::deep_groove_ball, GeometryClass::angular_contact_ball, GeometryClass::cylindrical_roller,
          GeometryClass::tapered_roller, GeometryClass::spherical_roller}) {
        row.geometry_class = geometry;
        INFO(toString(geometry));
        CHECK(upperHalf(bearingSection(choiceOf(row), {}, SectionStyle{})).hatched);
    }
}
