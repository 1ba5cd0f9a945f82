#include "core/bearings/load_composite.h"
#include "core/bearings/load_rating.h"

#include <numbers>

namespace shaftwright
{
namespace
{

using namespace bearings;
using factors::LoadFactors;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double degree = std::numbers::pi / 180.0;
constexpr const char* table3 = "ISO 281:2007, Table 3 (from memory)";

double branch1(const LoadFactors& f, double Fr_N, double Fa_N)
{
    return f.X1 * Fr_N + f.Y1 * Fa_N;
}

double branch2(const LoadFactors& f, double Fr_N, double Fa_N)
{
    return f.X2 * Fr_N + f.Y2 * Fa_N;
}

/// One-way inclined thrust bearings hold a radial force only as long as the axial one keeps all elements loaded.
bool thrustHolds(double e, double Fr_N, double Fa_N)
{
    return Fa_N >= e * Fr_N - noForce_N;
}

bool looseRingsHold(double Fr_N, double Fa_N)
{
    return Fa_N <= looseRingAxialShare * Fr_N + noForce_N;
}

bool flatThrustHolds(double Fr_N, double Fa_N)
{
    return Fr_N <= flatThrustRadialShare * Fa_N + noForce_N;
}

const char* sourceOf(LoadLaw law)
{
    switch (law) {
    case LoadLaw::inclined_roller:
        return "ISO 281:2007, Table 8 (from memory)";
    case LoadLaw::thrust_ball_one_way:
    case LoadLaw::thrust_ball_two_way:
        return "ISO 281:2007, Table 5 (from memory)";
    case LoadLaw::thrust_roller_one_way:
        return "ISO 281:2007, Table 11 (from memory)";
    case LoadLaw::radial_only:
        return "ISO 281:2007, 7.2 (from memory)";
    case LoadLaw::axial_only:
        return "ISO 281:2007, 6.2 and 8.2 (from memory)";
    default:
        return table3;
    }
}

/// A table value between two nodes, or the node itself.
DerivationStep tableStep(const char* code, const char* symbol, const std::array<double, factors::relNodes>& grid,
                         const std::array<double, factors::relNodes>& values, double rel)
{
    const factors::Bracket at = factors::bracket(grid, rel);
    DerivationStep step;
    step.code = code;
    step.symbol = symbol;
    step.result = at.in(values);
    step.source = table3;
    const std::string s = symbol;
    if (at.low == at.high) {
        step.formula = s + "(rel)";
        step.inputs = {{"rel", grid[at.low]}};
    } else {
        step.formula = s + "a + (" + s + "b - " + s + "a) (rel - rela) / (relb - rela)";
        step.inputs = {
            {"rel", rel}, {"rela", grid[at.low]}, {"relb", grid[at.high]}, {s + "a", values[at.low]}, {s + "b", values[at.high]}};
    }
    return step;
}

DerivationStep angleMix(const char* code, const char* symbol, double low, double high, double alpha, double alphaLow,
                        double result)
{
    const std::string s = symbol;
    return {code,
            symbol,
            s + "a + (" + s + "b - " + s + "a) (alpha - alphaa) / 5",
            {{s + "a", low}, {s + "b", high}, {"alpha", alpha}, {"alphaa", alphaLow}},
            result,
            "",
            table3};
}

void addAngularSteps(Derivation& steps, const BearingRating& rating, double rel, const LoadFactors& f)
{
    const double alpha = rating.contact_angle_rad / degree;
    const bool two = twoRows(rating);
    const auto columns = factors::angularColumns();
    for (const factors::AngularColumn& column : columns) {
        if (std::abs(column.alpha_deg - alpha) > 1e-6)
            continue;
        if (column.depends_on_load) {
            const bool likeGroove = !two && column.alpha_deg == factors::leastAngularAngle_deg;
            steps.push_back(tableStep("limiting_ratio", "e", column.rel, likeGroove ? factors::deepGrooveE() : column.e, rel));
            if (two)
                steps.push_back(tableStep("axial_factor_below_e", "Y1", column.rel, column.Y1_double, rel));
            steps.push_back(tableStep("axial_factor", "Y", column.rel, two ? column.Y2_double : column.Y2_single, rel));
        } else {
            steps.push_back({"limiting_ratio", "e", "e(alpha)", {{"alpha", column.alpha_deg}}, f.e, "", table3});
            steps.push_back({"axial_factor", "Y", "Y(alpha)", {{"alpha", column.alpha_deg}}, f.Y2, "", table3});
        }
        return;
    }
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
        if (alpha < columns[i].alpha_deg || alpha > columns[i + 1].alpha_deg)
            continue;
        const LoadFactors low = factors::angularAt(columns[i], two, rel), high = factors::angularAt(columns[i + 1], two, rel);
        const double at = columns[i].alpha_deg;
        steps.push_back(angleMix("limiting_ratio", "e", low.e, high.e, alpha, at, f.e));
        if (two)
            steps.push_back(angleMix("axial_factor_below_e", "Y1", low.Y1, high.Y1, alpha, at, f.Y1));
        steps.push_back(angleMix("radial_factor", "X", low.X2, high.X2, alpha, at, f.X2));
        steps.push_back(angleMix("axial_factor", "Y", low.Y2, high.Y2, alpha, at, f.Y2));
        return;
    }
}

void addClosedSteps(Derivation& steps, const BearingRating& rating, LoadLaw law, const LoadFactors& f)
{
    const double alpha = rating.contact_angle_rad / degree;
    const NamedValues angle = {{"alpha", alpha}};
    const bool two = twoRows(rating);
    const char* source = sourceOf(law);
    const char *e = "1.5 tan(alpha)", *X = "", *Y = "";
    switch (law) {
    case LoadLaw::self_aligning:
        Y = two ? "0.65 cot(alpha)" : "0.40 cot(alpha)";
        break;
    case LoadLaw::inclined_roller:
        Y = two ? "0.67 cot(alpha)" : "0.40 cot(alpha)";
        break;
    case LoadLaw::thrust_ball_one_way:
    case LoadLaw::thrust_ball_two_way:
        e = "1.25 tan(alpha)";
        X = "1.25 tan(alpha) (1 - 2/3 sin(alpha))";
        break;
    case LoadLaw::thrust_roller_one_way:
        X = "tan(alpha)";
        break;
    default:
        break;
    }
    if (!rating.e)
        steps.push_back({"limiting_ratio", "e", e, angle, f.e, "", source});
    if (*X && !rating.X)
        steps.push_back({"radial_factor", "X", X, angle, f.X2, "", source});
    if (*Y && !rating.Y)
        steps.push_back({"axial_factor", "Y", Y, angle, f.Y2, "", source});
    if (two && law == LoadLaw::self_aligning)
        steps.push_back({"axial_factor_below_e", "Y1", "0.42 cot(alpha)", angle, f.Y1, "", source});
    if (two && law == LoadLaw::inclined_roller)
        steps.push_back({"axial_factor_below_e", "Y1", "0.45 cot(alpha)", angle, f.Y1, "", source});
}

void addFactorSteps(Derivation& steps, const BearingRating& rating, LoadLaw law, double Fa_N, double rel, const LoadFactors& f)
{
    if (needsF0(rating, law)) {
        const int sharing = law == LoadLaw::angular && rating.tandem <= 1 ? rating.rows : 1;
        DerivationStep step{"relative_axial_load",
                            "rel",
                            sharing > 1 ? "f0 i Fa / C0" : "f0 Fa / C0",
                            {{"f0", rating.f0.value_or(assumedF0)}, {"Fa", Fa_N}, {"C0", rating.C0_N}},
                            rel,
                            "",
                            table3};
        if (sharing > 1)
            step.inputs.set("i", static_cast<double>(sharing));
        steps.push_back(std::move(step));
    }
    if (law == LoadLaw::deep_groove && !(rating.e && rating.Y)) {
        steps.push_back(tableStep("limiting_ratio", "e", factors::deepGrooveRel(), factors::deepGrooveE(), rel));
        steps.push_back(tableStep("axial_factor", "Y", factors::deepGrooveRel(), factors::deepGrooveY(), rel));
    } else if (law == LoadLaw::angular && !(rating.e && rating.Y)) {
        addAngularSteps(steps, rating, rel, f);
    } else {
        addClosedSteps(steps, rating, law, f);
    }
    const char* catalogue = "catalogue data of the row";
    if (rating.e)
        steps.push_back({"limiting_ratio", "e", "e", {}, *rating.e, "", catalogue});
    if (rating.Y)
        steps.push_back({"axial_factor", "Y", "Y", {}, *rating.Y, "", catalogue});
}

Finding stop(const char* code, NamedValues values, const char* source)
{
    Finding finding;
    finding.severity = Severity::stop;
    finding.code = code;
    finding.values = std::move(values);
    finding.source = source;
    return finding;
}

NamedValues loads(double Fr_N, double Fa_N)
{
    return {{"Fr_N", Fr_N}, {"Fa_N", Fa_N}};
}

/// Stops that leave P empty. @return true when there is one
bool refuse(EquivalentLoad& out, const BearingRating& rating, LoadLaw law, double Fr_N, double Fa_N)
{
    if (!std::isfinite(Fr_N) || !std::isfinite(Fa_N)) {
        Finding finding = stop("value-invalid", {{"name", std::isfinite(Fr_N) ? "Fa_N" : "Fr_N"}}, "");
        finding.variant = "load";
        out.findings.push_back(std::move(finding));
        return true;
    }
    if (law == LoadLaw::none) {
        Finding finding =
            stop("not-assessed", {{"family", std::string(toString(rating.family))}}, "ISO 281:2007, scope (from memory)");
        finding.severity = Severity::note;
        finding.variant = "bearing-life";
        out.findings.push_back(std::move(finding));
        return true;
    }
    if (law == LoadLaw::bad_angle) {
        Finding finding = stop(
            "value-invalid",
            {{"contact_angle_deg", rating.contact_angle_rad / degree}, {"family", std::string(toString(rating.family))}}, table3);
        finding.variant = "contact-angle";
        out.findings.push_back(std::move(finding));
        return true;
    }
    const bool rated = rating.C_N > 0.0 && std::isfinite(rating.C_N);
    const bool ratedStatic = !needsF0(rating, law) || (rating.C0_N > 0.0 && std::isfinite(rating.C0_N));
    if (!rated || !ratedStatic) {
        Finding finding =
            stop("value-invalid", {{"name", rated ? "C0_N" : "C_N"}, {"value", rated ? rating.C0_N : rating.C_N}}, "");
        finding.variant = "rating";
        out.findings.push_back(std::move(finding));
        return true;
    }
    if (law == LoadLaw::radial_only && axialSense(rating.family) == AxialSense::none && !looseRingsHold(Fr_N, Fa_N)) {
        NamedValues values = loads(Fr_N, Fa_N);
        values.set("Fa_limit_N", looseRingAxialShare * Fr_N);
        Finding finding = stop("axial-not-carried", std::move(values), "common practice");
        finding.variant = "loose-rings";
        out.findings.push_back(std::move(finding));
        return true;
    }
    if (law == LoadLaw::axial_only && !flatThrustHolds(Fr_N, Fa_N)) {
        NamedValues values = loads(Fr_N, Fa_N);
        values.set("Fr_limit_N", flatThrustRadialShare * Fa_N);
        out.findings.push_back(stop("radial-on-thrust", std::move(values), "common practice"));
        return true;
    }
    if (law == LoadLaw::thrust_ball_one_way || law == LoadLaw::thrust_roller_one_way) {
        const double e = loadFactors(rating, law, 0.0).e;
        if (!thrustHolds(e, Fr_N, Fa_N)) {
            NamedValues values = loads(Fr_N, Fa_N);
            values.set("Fr_limit_N", Fa_N / e);
            Finding finding = stop("radial-on-thrust", std::move(values), sourceOf(law));
            finding.variant = "inclined";
            out.findings.push_back(std::move(finding));
            return true;
        }
    }
    return false;
}

EquivalentLoad jointLoad(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense)
{
    EquivalentLoad out;
    const double P = jointP_N(rating, Fr_N, Fa_N, sense, [&out](const BearingRating& member, const MemberLoad& load) {
        EquivalentLoad one = equivalentLoad(member, load.Fr_N, load.Fa_N);
        out.findings.insert(out.findings.end(), one.findings.begin(), one.findings.end());
        out.derivation.insert(out.derivation.end(), one.derivation.begin(), one.derivation.end());
        out.axial_branch = out.axial_branch || one.axial_branch;
        out.relative_axial_load = std::max(out.relative_axial_load, one.relative_axial_load);
        return one.P_N.value_or(nan);
    });
    if (!std::isfinite(P))
        return out;
    out.P_N = P;
    DerivationStep step{"equivalent_load_joint",
                        "P",
                        "C (sum (Pk/Ck)^(pk w))^(1/(p w)), w = 10/9",
                        {},
                        P,
                        "N",
                        "Lundberg/Palmgren system life (from memory)"};
    step.inputs.set("C", rating.C_N);
    step.inputs.set("p", rating.life_exponent);
    int number = 1;
    for (const BearingRating& member : rating.members) {
        const MemberLoad load = memberLoad(rating, member, Fr_N, Fa_N, sense);
        const std::string k = std::to_string(number++);
        step.inputs.set("P" + k, equivalentLoadQuick_N(member, load.Fr_N, load.Fa_N));
        step.inputs.set("C" + k, member.C_N);
        step.inputs.set("p" + k, member.life_exponent);
    }
    out.derivation.push_back(std::move(step));
    return out;
}

} // namespace

EquivalentLoad equivalentLoad(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense)
{
    EquivalentLoad out;
    Fr_N = std::abs(Fr_N);
    Fa_N = std::abs(Fa_N);
    const LoadLaw law = lawOf(rating);
    if (refuse(out, rating, law, Fr_N, Fa_N))
        return out;
    if (law == LoadLaw::apart)
        return jointLoad(rating, Fr_N, Fa_N, sense);
    if (law == LoadLaw::radial_only) {
        out.P_N = Fr_N;
        out.derivation.push_back({"equivalent_load", "P", "Fr", {{"Fr", Fr_N}}, Fr_N, "N", sourceOf(law)});
        return out;
    }
    if (law == LoadLaw::axial_only) {
        out.X = 0.0;
        out.Y = 1.0;
        out.axial_branch = true;
        out.P_N = Fa_N;
        out.derivation.push_back({"equivalent_load", "P", "Fa", {{"Fa", Fa_N}}, Fa_N, "N", sourceOf(law)});
        return out;
    }

    const double rel = relativeAxialLoad(rating, law, Fa_N);
    const LoadFactors f = loadFactors(rating, law, rel);
    const bool oneBranch = law == LoadLaw::thrust_ball_one_way || law == LoadLaw::thrust_roller_one_way;
    const double below = branch1(f, Fr_N, Fa_N), above = branch2(f, Fr_N, Fa_N);
    out.relative_axial_load = rel;
    out.e = f.e;
    out.axial_branch = oneBranch || above > below;
    out.X = out.axial_branch ? f.X2 : f.X1;
    out.Y = out.axial_branch ? f.Y2 : f.Y1;
    const double P = out.axial_branch ? above : below;
    out.P_N = P;

    addFactorSteps(out.derivation, rating, law, Fa_N, rel, f);
    if (Fr_N > 0.0)
        out.derivation.push_back({"axial_ratio", "Fa/Fr", "Fa / Fr", {{"Fa", Fa_N}, {"Fr", Fr_N}}, Fa_N / Fr_N, "", ""});
    // The rounded branches cross beside the tabulated e; said only where it decides nothing or something visible.
    if (!oneBranch && f.Y2 > f.Y1) {
        const double crossing = (f.X1 - f.X2) / (f.Y2 - f.Y1);
        if (std::abs(crossing - f.e) > 1e-4 * f.e)
            out.derivation.push_back({"branch_crossing",
                                      "e*",
                                      "(X1 - X2) / (Y2 - Y1)",
                                      {{"X1", f.X1}, {"X2", f.X2}, {"Y1", f.Y1}, {"Y2", f.Y2}},
                                      crossing,
                                      "",
                                      "derived"});
    }
    out.derivation.push_back(
        {"equivalent_load", "P", "X Fr + Y Fa", {{"X", out.X}, {"Fr", Fr_N}, {"Y", out.Y}, {"Fa", Fa_N}}, P, "N", sourceOf(law)});

    if (needsF0(rating, law)) {
        if (law == LoadLaw::deep_groove && rel > factors::deepGrooveRel().back()) {
            Finding finding;
            finding.severity = Severity::caution;
            finding.code = "axial-beyond-table";
            finding.values = {{"relative_axial_load", rel}, {"limit", factors::deepGrooveRel().back()}, {"Fa_N", Fa_N}};
            finding.source = table3;
            out.findings.push_back(std::move(finding));
        }
        if (!rating.f0 && Fa_N > 0.0) {
            Finding finding;
            finding.code = "default-used";
            finding.variant = "f0";
            finding.values = {{"f0", assumedF0}};
            finding.source = "ISO 76:2006, Table 1 (from memory)";
            out.findings.push_back(std::move(finding));
        }
    }
    return out;
}

double equivalentLoadQuick_N(const BearingRating& rating, double Fr_N, double Fa_N, std::optional<Carries> sense)
{
    Fr_N = std::abs(Fr_N);
    Fa_N = std::abs(Fa_N);
    if (!std::isfinite(Fr_N) || !std::isfinite(Fa_N) || !(rating.C_N > 0.0))
        return nan;
    const LoadLaw law = lawOf(rating);
    switch (law) {
    case LoadLaw::none:
    case LoadLaw::bad_angle:
        return nan;
    case LoadLaw::radial_only:
        return axialSense(rating.family) != AxialSense::none || looseRingsHold(Fr_N, Fa_N) ? Fr_N : nan;
    case LoadLaw::axial_only:
        return flatThrustHolds(Fr_N, Fa_N) ? Fa_N : nan;
    case LoadLaw::apart:
        return jointP_N(rating, Fr_N, Fa_N, sense, [](const BearingRating& member, const MemberLoad& load) {
            return equivalentLoadQuick_N(member, load.Fr_N, load.Fa_N);
        });
    default:
        break;
    }
    if (needsF0(rating, law) && !(rating.C0_N > 0.0))
        return nan;
    const LoadFactors f = loadFactors(rating, law, relativeAxialLoad(rating, law, Fa_N));
    if (law == LoadLaw::thrust_ball_one_way || law == LoadLaw::thrust_roller_one_way)
        return thrustHolds(f.e, Fr_N, Fa_N) ? branch2(f, Fr_N, Fa_N) : nan;
    return std::max(branch1(f, Fr_N, Fa_N), branch2(f, Fr_N, Fa_N));
}

} // namespace shaftwright
