#include "decisions.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

using namespace shaftwright;

namespace decisions
{
namespace
{

struct Load {
    double Fr_N, Fa_N, speed_rpm, tilt_mrad;
    double Fa_reverse_N = 0.0;
    bool both_ways = false; ///< equal force in both senses, half the time each
};

Decision make(const std::string& name, Role role, double seat_mm, const Load& load, double required_L_h,
              const std::string& profile, Lubricant lubricant, double temperature_C)
{
    Decision d;
    d.name = name;
    d.question.role = role;
    d.question.seat_mm = seat_mm;
    d.question.required_L_h = required_L_h;
    SupportLoad main{load.Fr_N, load.Fa_N, load.Fa_N > 0.0 ? 1 : 0, load.speed_rpm, 1.0, load.tilt_mrad};
    if (load.both_ways) {
        SupportLoad back = main;
        back.axial_sense = -1;
        main.time_share = back.time_share = 0.5;
        d.question.cases = {main, back};
    } else if (load.Fa_reverse_N > 0.0) {
        // A short upthrust: it counts for direction, not for life.
        SupportLoad back = main;
        back.axial_sense = -1;
        back.Fa_N = load.Fa_reverse_N;
        back.time_share = 0.0;
        d.question.cases = {main, back};
    } else {
        d.question.cases = {main};
    }
    d.settled.profile = profile;
    d.settled.lubricant = lubricant;
    d.settled.temperature_C = temperature_C;
    return d;
}

std::vector<std::string> split(const std::string& text, char at)
{
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, at);)
        out.push_back(part);
    return out;
}

} // namespace

std::vector<Decision> all()
{
    std::vector<Decision> out;
    const auto space = [](Decision& d, double outer_mm, double width_mm) {
        d.question.greatest_outer_mm = outer_mm;
        d.question.greatest_width_mm = width_mm;
    };
    // D1: spur gearbox shaft, locating end.
    out.push_back(make("D1", Role::locating, 30, {1500, 0, 1450, 0.5}, 15000, "general_gearbox", Lubricant::oil, 70));
    space(out.back(), 72, 22);
    // D2: the same shaft, non-locating end.
    out.push_back(make("D2", Role::non_locating, 30, {2900, 0, 1450, 0.6}, 15000, "general_gearbox", Lubricant::oil, 70));
    space(out.back(), 72, 22);
    out.back().question.s_required_mm = 0.1;
    // D3: helical intermediate shaft, both senses of rotation, locating end.
    out.push_back(make("D3", Role::locating, 45, {4200, 3600, 600, 0.3, 0, true}, 12000, "general_gearbox", Lubricant::oil, 75));
    space(out.back(), 100, 50);
    // D4: bevel pinion, nose support of an adjusted pair.
    out.push_back(make("D4", Role::adjusted, 50, {7500, 4200, 1200, 0.4}, 12000, "general_gearbox", Lubricant::oil, 80));
    space(out.back(), 110, 45);
    out.back().settled.stiffness_wish = StiffnessWish::radial;
    // D5: conveyor drum in pedestals, locating end.
    out.push_back(make("D5", Role::locating, 65, {19000, 900, 90, 6.0}, 40000, "conveyor", Lubricant::grease, 45));
    out.back().settled.dirt = Dirt::dirty;
    out.back().settled.moist = true;
    // D6: the same drum, non-locating end.
    out.push_back(make("D6", Role::non_locating, 65, {19000, 0, 90, 6.0}, 40000, "conveyor", Lubricant::grease, 45));
    out.back().question.s_required_mm = 0.4;
    out.back().settled.dirt = Dirt::dirty;
    out.back().settled.moist = true;
    // D7: milling spindle nose.
    out.push_back(
        make("D7", Role::locating, 70, {1400, 900, 8000, 0.08, 0, true}, 20000, "precision_spindle", Lubricant::grease, 45));
    space(out.back(), 125, 50);
    out.back().settled.dirt = Dirt::clean;
    out.back().settled.quiet = Grade::high;
    out.back().settled.accuracy = Grade::high;
    out.back().settled.stiffness_wish = StiffnessWish::axial;
    // D8: electric motor, drive end with coupling.
    out.push_back(make("D8", Role::locating, 40, {650, 150, 2950, 0.5}, 25000, "electric_motor", Lubricant::grease, 75));
    space(out.back(), 90, 33);
    out.back().settled.quiet = Grade::high;
    // D9: planet wheel on a hard pin.
    out.push_back(make("D9", Role::non_locating, 35, {7000, 0, 420, 0.4}, 10000, "general_gearbox", Lubricant::oil, 80));
    space(out.back(), 55, 40);
    out.back().settled.surface_hardness_HRC = 60;
    // D10: vertical well pump, thrust down, short upthrust.
    out.push_back(make("D10", Role::locating, 60, {900, 12000, 1480, 0.15, 1500}, 20000, "pump_fan", Lubricant::oil, 70));
    space(out.back(), 150, 95);
    // D11: worm shaft, locating end, both senses.
    out.push_back(
        make("D11", Role::locating, 45, {2600, 6000, 1450, 0.25, 0, true}, 10000, "general_gearbox", Lubricant::oil, 90));
    space(out.back(), 110, 60);
    // D12: lever shaft of a tillage machine; the speed is the one equivalent to the swing.
    out.push_back(make("D12", Role::non_locating, 30, {3000, 0, 8, 1.5}, 2000, "agricultural", Lubricant::grease, 30));
    space(out.back(), 62, 34);
    out.back().settled.dirt = Dirt::severe;
    out.back().settled.moist = true;
    out.back().settled.motion = Motion::oscillation;
    out.back().settled.allow_plain = true;
    out.back().settled.K_A = 1.5; // pronounced shocks
    return out;
}

std::vector<Row> table()
{
    std::ifstream file(std::string(SHAFTWRIGHT_SOURCE_DIR) + "/tests/core/selection/decisions.csv");
    std::string line;
    if (!std::getline(file, line))
        throw std::runtime_error("decisions.csv is missing");
    std::vector<Row> out;
    while (std::getline(file, line)) {
        std::vector<std::string> cells = split(line, ',');
        cells.resize(11);
        out.push_back({cells[0], cells[1], cells[2], split(cells[4], ' '), cells[5], cells[6], cells[7], cells[8], cells[9],
                       split(cells[10], ' ')});
    }
    return out;
}

const char* word(Verdict verdict)
{
    switch (verdict) {
    case Verdict::suited:
        return "suited";
    case Verdict::with_care:
        return "with_care";
    case Verdict::unsuited:
        return "unsuited";
    }
    return "";
}

} // namespace decisions
