#include "core/analysis/axial_roles.h"

#include "core/bearings/rating.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::analysis
{
namespace
{

std::string nameOf(const Support& support)
{
    return support.name.empty() ? support.id.value : support.name;
}

Finding finding(Severity severity, const char* code, const Support* support, const char* input, NamedValues values)
{
    Finding result;
    result.severity = severity;
    result.code = code;
    if (support != nullptr) {
        result.subject = support->id.value;
        result.path = "supports." + support->id.value + "." + input;
    }
    result.values = std::move(values);
    result.source = "handbooks on bearing arrangements; common practice";
    return result;
}

} // namespace

int AxialRoles::holder(double K_N) const
{
    for (std::size_t i = 0; i < supports.size(); ++i) {
        const bool can = K_N > 0.0 ? supports[i].plus : K_N < 0.0 ? supports[i].minus : supports[i].plus || supports[i].minus;
        if (can)
            return static_cast<int>(i);
    }
    return -1;
}

AxialRoles settleAxialRoles(const Arrangement& arrangement)
{
    AxialRoles roles;
    const auto& supports = arrangement.supports;
    roles.supports.resize(supports.size());

    std::vector<std::size_t> locating, adjusted, end_play;
    double middle_mm = 0.0;
    for (const Support& support : supports)
        middle_mm += support.x_mm / static_cast<double>(supports.size());

    for (std::size_t i = 0; i < supports.size(); ++i) {
        const Support& support = supports[i];
        AxialRole& role = roles.supports[i];
        const bool right = support.x_mm > middle_mm;
        const auto settleSide = [&](Carries by_position, const char* reason) {
            if (support.carries) {
                role.carries = support.carries;
                return;
            }
            role.carries = by_position;
            roles.assumptions.push_back({"supports." + support.id.value + ".carries",
                                         std::string(by_position == Carries::plus ? "plus" : "minus"), "", reason});
        };
        switch (support.role) {
        case Role::locating:
            role.plus = role.minus = true;
            role.carries = support.carries;
            locating.push_back(i);
            break;
        case Role::non_locating:
            role.carries = support.carries;
            break;
        case Role::adjusted:
            // Face-to-face is the usual gearbox shaft: the right support holds it against +x.
            settleSide(right ? Carries::plus : Carries::minus, "carries_adjusted");
            adjusted.push_back(i);
            break;
        case Role::end_play:
            settleSide(right ? Carries::plus : Carries::minus, "carries_end_play");
            end_play.push_back(i);
            break;
        case Role::axial_only: {
            const bool both = support.bearing && axialSense(support.bearing->family) == AxialSense::both_ways;
            if (both && !support.carries) {
                role.plus = role.minus = true;
            } else {
                settleSide(right ? Carries::plus : Carries::minus, "carries_axial_only");
            }
            break;
        }
        }
        if (role.carries && support.role != Role::locating && support.role != Role::non_locating) {
            role.plus = role.plus || *role.carries == Carries::plus;
            role.minus = role.minus || *role.carries == Carries::minus;
        }
    }

    // An adjusted pair is exactly two supports of opposite sense.
    if (adjusted.size() == 1) {
        roles.findings.push_back(finding(Severity::stop, "adjusted-single", &supports[adjusted[0]], "role",
                                         {{"support", nameOf(supports[adjusted[0]])}}));
    } else if (adjusted.size() == 2) {
        const auto side = [&](std::size_t index) { return *roles.supports[index].carries; };
        if (side(adjusted[0]) == side(adjusted[1])) {
            roles.findings.push_back(
                finding(Severity::stop, "adjusted-same-direction", &supports[adjusted[1]], "carries",
                        {{"a", nameOf(supports[adjusted[0]])},
                         {"b", nameOf(supports[adjusted[1]])},
                         {"direction", std::string(side(adjusted[0]) == Carries::plus ? "minus" : "plus")}}));
        } else {
            const bool first_plus = side(adjusted[0]) == Carries::plus;
            roles.pair_plus = static_cast<int>(first_plus ? adjusted[0] : adjusted[1]);
            roles.pair_minus = static_cast<int>(first_plus ? adjusted[1] : adjusted[0]);
        }
    } else if (adjusted.size() > 2) {
        roles.findings.push_back(finding(Severity::stop, "adjusted-single", &supports[adjusted[2]], "role",
                                         {{"support", nameOf(supports[adjusted[2]])}}));
        roles.findings.back().variant = "more_than_two";
    }
    if (!adjusted.empty() && !locating.empty())
        roles.findings.push_back(
            finding(Severity::stop, "adjusted-with-locating", &supports[locating[0]], "role",
                    {{"locating", nameOf(supports[locating[0]])}, {"adjusted", nameOf(supports[adjusted[0]])}}));

    // Held twice in one sense without play, at different places.
    const auto holdsStiffly = [&](std::size_t i, bool plus) {
        if (supports[i].role == Role::end_play || supports[i].role == Role::adjusted)
            return false;
        return plus ? roles.supports[i].plus : roles.supports[i].minus;
    };
    for (const bool plus : {true, false}) {
        int first = -1;
        bool found = false;
        for (std::size_t i = 0; i < supports.size() && !found; ++i) {
            if (!holdsStiffly(i, plus))
                continue;
            if (first < 0) {
                first = static_cast<int>(i);
            } else {
                const Support& a = supports[static_cast<std::size_t>(first)];
                const bool reported = std::any_of(roles.findings.begin(), roles.findings.end(),
                                                  [](const Finding& other) { return other.code == "two-locating"; });
                if (!reported)
                    roles.findings.push_back(finding(Severity::stop, "two-locating", &supports[i], "role",
                                                     {{"a", nameOf(a)},
                                                      {"b", nameOf(supports[i])},
                                                      {"direction", std::string(plus ? "plus" : "minus")},
                                                      {"distance_mm", std::abs(supports[i].x_mm - a.x_mm)}}));
                found = true;
            }
        }
    }
    if (end_play.size() == 1 && locating.empty()) {
        roles.findings.push_back(finding(Severity::stop, "adjusted-single", &supports[end_play[0]], "role",
                                         {{"support", nameOf(supports[end_play[0]])}}));
        roles.findings.back().variant = "end_play";
    }

    if (!supports.empty()) {
        for (const bool plus : {true, false}) {
            const bool held = std::any_of(roles.supports.begin(), roles.supports.end(),
                                          [&](const AxialRole& role) { return plus ? role.plus : role.minus; });
            if (!held) {
                Finding missing = finding(Severity::stop, "axial-location-missing", nullptr, "",
                                          {{"direction", std::string(plus ? "plus" : "minus")}});
                missing.path = "supports";
                missing.values.set("support", nameOf(supports.front()));
                roles.findings.push_back(std::move(missing));
            }
        }
        // Both senses open is one statement.
        auto& findings = roles.findings;
        const auto is_missing = [](const Finding& f) { return f.code == "axial-location-missing"; };
        if (std::count_if(findings.begin(), findings.end(), is_missing) == 2) {
            findings.pop_back();
            findings.back().variant = "both";
        }
    }
    return roles;
}

} // namespace shaftwright::analysis
