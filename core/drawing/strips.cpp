#include "core/drawing/sheet_common.h"

#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace shaftwright::drawing
{

using namespace inner;

namespace
{

/// Value of a strip in N, Nmm, mm or rad.
double valueOf(const beam::State& state, StripKind kind, Plane plane)
{
    const auto pick = [plane](double y, double z) { return plane == Plane::y ? y : plane == Plane::z ? z : std::hypot(y, z); };
    switch (kind) {
    case StripKind::shear:
        return pick(state.Vy_N, state.Vz_N);
    case StripKind::moment:
        return pick(state.Mz_Nmm, state.My_Nmm);
    case StripKind::torque:
        return state.T_Nmm;
    case StripKind::axial:
        return state.N_N;
    case StripKind::deflection:
        return pick(state.v_mm, state.w_mm);
    case StripKind::slope:
        return pick(state.rz_rad, state.ry_rad);
    }
    return 0.0;
}

/// Unit of the strip by the largest resultant of the shown cases, so that y, z and resultant share it and a hairline agrees.
Unit unitOf(const beam::Solution& solution, int case_index, StripKind kind)
{
    double largest = 0.0;
    for (std::size_t i = 0; i < solution.cases.size(); ++i) {
        if (case_index >= 0 && static_cast<std::size_t>(case_index) != i)
            continue;
        const beam::CaseResult& result = solution.cases[i];
        const beam::Extreme& extreme = kind == StripKind::shear        ? result.shear_N
                                       : kind == StripKind::moment     ? result.moment_Nmm
                                       : kind == StripKind::torque     ? result.torque_Nmm
                                       : kind == StripKind::axial      ? result.axial_N
                                       : kind == StripKind::deflection ? result.deflection_mm
                                                                       : result.slope_rad;
        largest = std::max(largest, std::abs(extreme.value));
    }
    switch (kind) {
    case StripKind::shear:
    case StripKind::axial:
        return forceUnit(largest);
    case StripKind::moment:
    case StripKind::torque:
        return momentUnit(largest);
    case StripKind::deflection:
        return largest >= 1.0 ? Unit{1.0, "mm"} : Unit{1e3, "µm"};
    case StripKind::slope:
        return {1e3, "mrad"};
    }
    return {};
}

/// The unit that is held with a range, else the strip's own.
Unit unitOf(const beam::Solution& solution, int case_index, StripKind kind, const std::optional<StripRange>& held)
{
    if (held && !held->unit.empty() && held->factor > 0.0 && std::isfinite(held->factor))
        return {held->factor, held->unit};
    return unitOf(solution, case_index, kind);
}

struct Sample {
    double x = 0.0;
    double high = 0.0, low = 0.0; ///< envelope; equal for one case
    int high_case = 0, low_case = 0;
};

/// Step 1-2-5 for which at most `count` intervals cover the span.
double tickStep(double span, double count)
{
    const double raw = span / count;
    const double decade = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        if (span / (decade * factor) <= count * (1.0 + 1e-9))
            return decade * factor;
    }
    return decade * 10.0;
}

std::string tickText(double value, double step)
{
    if (value == 0.0)
        return "0";
    const int decimals = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
    return typographic(fixedDecimal(value, decimals));
}

constexpr std::size_t mostPoints = 150;

/// Samples of the shown case or the envelope over all, in the strip's unit.
std::vector<Sample> samplesOf(const beam::Solution& solution, int case_index, StripKind kind, Plane plane, double factor)
{
    std::vector<Sample> out;
    const std::size_t nodes = solution.node_x_mm.size();
    // Shear, axial force and torque are straight between nodes up to own weight; the others bend.
    const int wanted = kind == StripKind::deflection || kind == StripKind::slope || plane == Plane::resultant ? 6
                       : kind == StripKind::moment                                                            ? 3
                                                                                                              : 1;
    const int room = nodes > 1 ? static_cast<int>((static_cast<double>(mostPoints) - 2.0 * static_cast<double>(nodes)) /
                                                  (static_cast<double>(nodes) - 1.0))
                               : 0;
    const int per_element = std::clamp(room, 0, wanted);
    for (std::size_t i = 0; i < solution.cases.size(); ++i) {
        if (case_index >= 0 && static_cast<std::size_t>(case_index) != i)
            continue;
        const std::vector<beam::State> states = beam::sample(solution, i, per_element);
        const auto number = static_cast<int>(i);
        if (out.empty()) {
            out.reserve(states.size());
            for (const beam::State& state : states) {
                const double value = valueOf(state, kind, plane) * factor;
                out.push_back({state.x_mm, value, value, number, number});
            }
            continue;
        }
        for (std::size_t k = 0; k < std::min(states.size(), out.size()); ++k) {
            const double value = valueOf(states[k], kind, plane) * factor;
            if (value > out[k].high) {
                out[k].high = value;
                out[k].high_case = number;
            }
            if (value < out[k].low) {
                out[k].low = value;
                out[k].low_case = number;
            }
        }
    }
    out.erase(std::remove_if(
                  out.begin(), out.end(),
                  [](const Sample& one) { return !std::isfinite(one.high) || !std::isfinite(one.low) || !std::isfinite(one.x); }),
              out.end());
    return out;
}

/// Leaves out points that no eye would miss, keeping ends, jumps and extremes, until at most `mostPoints` are left.
void thin(std::vector<Sample>& samples)
{
    if (samples.size() <= mostPoints)
        return;
    double low = 0.0;
    double high = 0.0;
    for (const Sample& one : samples) {
        low = std::min(low, one.low);
        high = std::max(high, one.high);
    }
    double tolerance = 1e-4 * (high - low);
    for (int round = 0; round < 12 && samples.size() > mostPoints; ++round, tolerance *= 3.0) {
        std::vector<Sample> kept{samples.front()};
        for (std::size_t i = 1; i + 1 < samples.size(); ++i) {
            const Sample& a = kept.back();
            const Sample& b = samples[i];
            const Sample& c = samples[i + 1];
            const double span = c.x - a.x;
            const double t = span > 0.0 ? (b.x - a.x) / span : 0.5;
            const bool off = std::abs(a.high + (c.high - a.high) * t - b.high) > tolerance ||
                             std::abs(a.low + (c.low - a.low) * t - b.low) > tolerance;
            const bool extreme = b.high == high || b.low == low;
            if (off || extreme)
                kept.push_back(b);
        }
        kept.push_back(samples.back());
        samples = std::move(kept);
    }
}

struct Extreme {
    double x = 0.0, value = 0.0;
    int case_index = 0;
};

/// The sampled extreme, refined inside its element by a parabola through the neighbours.
Extreme refined(const beam::Solution& solution, const std::vector<Sample>& samples, std::size_t at, bool highest, StripKind kind,
                Plane plane, double factor)
{
    const Sample& b = samples[at];
    Extreme best{b.x, highest ? b.high : b.low, highest ? b.high_case : b.low_case};
    if (at == 0 || at + 1 >= samples.size())
        return best;
    const Sample& a = samples[at - 1];
    const Sample& c = samples[at + 1];
    if (!(a.x < b.x && b.x < c.x))
        return best;
    const double ya = highest ? a.high : a.low;
    const double yc = highest ? c.high : c.low;
    const double d1 = (best.value - ya) / (b.x - a.x);
    const double d2 = (yc - best.value) / (c.x - b.x);
    const double bend = d2 - d1;
    if (bend == 0.0)
        return best;
    const double x = (a.x + b.x) / 2.0 - d1 * (c.x - a.x) / 2.0 / bend;
    if (!(x > a.x && x < c.x))
        return best;
    const double value =
        valueOf(beam::stateAt(solution, static_cast<std::size_t>(best.case_index), x, beam::Side::left), kind, plane) * factor;
    if (highest ? value > best.value : value < best.value) {
        best.x = x;
        best.value = value;
    }
    return best;
}

} // namespace

std::string stripTitle(StripKind kind, Plane plane)
{
    return std::string(labels::stripHead(kind, plane));
}

std::string stripSignNote(StripKind kind, Plane plane)
{
    return std::string(labels::signNote(kind, plane));
}

double stripY_mm(const SheetView& view, const StripRange& range, double value)
{
    const double span = range.high - range.low;
    const double text_room = view.label_height_mm + 2.2;
    const double margin_top = range.high > 0.0 ? text_room : 1.5;
    const double margin_bottom = range.low < 0.0 ? text_room + 0.3 : 1.5;
    const double plot = std::max(view.strip_height_mm - margin_top - margin_bottom, 2.0);
    return span > 0.0 ? -view.strip_height_mm + margin_bottom + (value - range.low) / span * plot : -view.strip_height_mm / 2.0;
}

StripReading readStrip(const Assessment& assessment, const SheetView& view, StripKind kind, double x_mm,
                       const std::optional<StripRange>& held_range)
{
    StripReading reading;
    const beam::Solution& solution = assessment.beam;
    if (!std::isfinite(x_mm))
        return reading;
    const auto count = static_cast<int>(solution.cases.size());
    const int chosen = view.case_index < 0 ? -1 : std::min(view.case_index, count - 1);
    const Unit unit = unitOf(solution, chosen, kind, held_range);
    reading.unit = std::string(unit.name);
    for (int i = 0; i < count; ++i) {
        if (chosen >= 0 && chosen != i)
            continue;
        const auto index = static_cast<std::size_t>(i);
        const double left = valueOf(beam::stateAt(solution, index, x_mm, beam::Side::left), kind, view.plane) * unit.factor;
        const double right = valueOf(beam::stateAt(solution, index, x_mm, beam::Side::right), kind, view.plane) * unit.factor;
        const double value = std::abs(right) > std::abs(left) ? right : left;
        if (!std::isfinite(value))
            continue;
        if (reading.case_index < 0 || std::abs(value) > std::abs(reading.value)) {
            reading.value = value;
            reading.left = left;
            reading.right = right;
            reading.case_index = i;
        }
    }
    const double size = std::max(std::abs(reading.left), std::abs(reading.right));
    reading.jump = std::abs(reading.left - reading.right) > 1e-9 * std::max(size, 1e-9);
    return reading;
}

DisplayList stripList(const Arrangement& arrangement, const Assessment& assessment, const SheetView& view, StripKind kind,
                      std::optional<StripRange> held_range, StripRange* used)
{
    DisplayList list;
    const double s = view.scale;
    const double length = std::max(arrangement.shaft.length_mm() * s, 0.0);
    const double height = view.strip_height_mm;
    const double h = view.label_height_mm;
    const Font font = view.label_font;
    const beam::Solution& solution = assessment.beam;
    const auto count = static_cast<int>(solution.cases.size());
    const int chosen = view.case_index < 0 ? -1 : std::min(view.case_index, count - 1);
    const bool envelope = chosen < 0 && count > 1;
    const Unit unit = unitOf(solution, chosen, kind, held_range);
    const double head_x = -stripHead_mm + 1.0;

    Group title;
    title.layer = Layer::strip;
    title.handle = "strip";
    title.items.emplace_back(
        Text{head_x, -1.0 - h, h, stripTitle(kind, view.plane), HAlign::left, VAlign::baseline, 0.0, Ink::ink, font, true, true});
    std::string second(unit.name);
    if (envelope)
        second += ", " + std::string(labels::allCases);
    title.items.emplace_back(
        Text{head_x, -1.0 - 2.6 * h, 0.9 * h, second, HAlign::left, VAlign::baseline, 0.0, Ink::ink2, font, false, true});

    std::vector<Sample> samples;
    if (solution.usable() && length > 0.0)
        samples = samplesOf(solution, chosen, kind, view.plane, unit.factor);
    if (samples.empty()) {
        if (used != nullptr)
            *used = held_range.value_or(StripRange{0.0, 0.0, std::string(unit.name), unit.factor});
        Group bare; // on the axis of the drawing, not with the head
        bare.layer = Layer::strip;
        line(bare, 0.0, -height / 2.0, std::max(length, 60.0), -height / 2.0, Stroke::thin, Ink::ink3);
        const std::string why(arrangement.shaft.segments.empty()                               ? std::string_view()
                              : textWidth_mm(std::string(labels::notSolved), h, font) < length ? labels::notSolved
                                                                                               : labels::notSolvedShort);
        if (!why.empty())
            bare.items.emplace_back(
                Text{2.0, -height / 2.0 + 1.2, h, why, HAlign::left, VAlign::baseline, 0.0, Ink::ink2, font, false, true});
        computeBounds(bare);
        list.groups.push_back(std::move(bare));
        computeBounds(title);
        list.groups.push_back(std::move(title));
        return list;
    }

    StripRange range{0.0, 0.0, std::string(unit.name), unit.factor};
    std::size_t top = 0;
    std::size_t bottom = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        if (samples[i].high > samples[top].high)
            top = i;
        if (samples[i].low < samples[bottom].low)
            bottom = i;
    }
    Extreme highest = refined(solution, samples, top, true, kind, view.plane, unit.factor);
    Extreme lowest = refined(solution, samples, bottom, false, kind, view.plane, unit.factor);
    // What is nothing beside the strip's own unit is rounding, not a load: no curve is blown up from it.
    const double floor = kind == StripKind::deflection || kind == StripKind::slope ? 1e-6 : 1e-7;
    range.low = std::min(0.0, lowest.value);
    range.high = std::max(0.0, highest.value);
    if (range.high - range.low < floor)
        range.low = range.high = 0.0;
    if (held_range) { // held, but never cut: a curve that outgrows it pushes the limit out
        range.low = std::min(range.low, held_range->low);
        range.high = std::max(range.high, held_range->high);
    }
    if (used != nullptr)
        *used = range;
    const double span = range.high - range.low;
    const auto yOf = [&](double value) { return stripY_mm(view, range, value); };
    const double zero_y = yOf(0.0);

    // Planes of loads and supports run through all strips; grid and ticks behind the curve.
    Group ground;
    ground.layer = Layer::ground;
    for (const Support& support : arrangement.supports) {
        if (std::isfinite(support.x_mm))
            line(ground, support.x_mm * s, 0.0, support.x_mm * s, -height, Stroke::centre, Ink::ink3);
    }
    for (const Part& part : arrangement.parts) {
        if (std::isfinite(part.x_mm))
            line(ground, part.x_mm * s, 0.0, part.x_mm * s, -height, Stroke::hairline, Ink::ink3);
    }
    const auto tick = [&](double value, const std::string& text) {
        const double y = yOf(value);
        if (value != 0.0)
            line(ground, 0.0, y, length, y, Stroke::hairline, Ink::rule);
        ground.items.emplace_back(
            Text{-2.0, y, 0.8 * h, text, HAlign::right, VAlign::middle, 0.0, Ink::ink3, font, false, false});
    };
    if (span > 0.0) {
        const double step = tickStep(span, std::max(2.0, height / 12.0));
        const auto first = static_cast<long>(std::ceil(range.low / step - 1e-9));
        const auto last = static_cast<long>(std::floor(range.high / step + 1e-9));
        for (long k = first; k <= last; ++k)
            tick(static_cast<double>(k) * step, tickText(static_cast<double>(k) * step, step));
    } else {
        tick(0.0, "0");
    }
    line(ground, -1.0, zero_y, length + 1.0, zero_y, Stroke::thin, Ink::ink2);
    computeBounds(ground);
    list.groups.push_back(std::move(ground));

    // Area from zero to the curve, or the band between both limits; then the curve.
    thin(samples);
    Group curve;
    curve.layer = Layer::strip;
    Path area{{}, true, Stroke::none, Ink::live_soft, Ink::live_soft};
    Path upper{{}, false, Stroke::thick, Ink::live, {}};
    area.vertices.reserve(2 * samples.size() + 2);
    upper.vertices.reserve(samples.size());
    if (span > 0.0 || !envelope) {
        for (const Sample& one : samples) {
            const double value = span > 0.0 ? one.high : 0.0;
            upper.vertices.push_back({one.x * s, yOf(value)});
        }
    } else {
        upper.vertices = {{0.0, zero_y}, {length, zero_y}};
    }
    area.vertices = upper.vertices;
    Path lower{{}, false, Stroke::thick, Ink::live, {}};
    if (envelope && span > 0.0) {
        for (const Sample& one : samples)
            lower.vertices.push_back({one.x * s, yOf(one.low)});
        for (auto it = lower.vertices.rbegin(); it != lower.vertices.rend(); ++it)
            area.vertices.push_back(*it);
    } else {
        area.vertices.push_back({upper.vertices.back().x, zero_y});
        area.vertices.push_back({upper.vertices.front().x, zero_y});
    }
    if (span > 0.0)
        curve.items.emplace_back(std::move(area));
    curve.items.emplace_back(upper);
    if (!lower.vertices.empty())
        curve.items.emplace_back(lower);

    // Labels by importance: extremes, jumps, supports. A label that finds no place is left to the hairline.
    struct Wanted {
        double x, value;
        std::vector<std::string> texts;
        bool above;
        int rank;
        int side; // +1: only right of the point, -1: only left, 0: centred first
    };
    std::vector<Wanted> wanted;
    const bool named = envelope && assessment.load_cases.size() == solution.cases.size();
    // From the whole text to the bare value: what fits is written.
    const auto extremeTexts = [&](const Extreme& extreme) {
        // A place that was typed to a tenth is named so; an extreme found between places is not known that well.
        const double tenths = std::round(extreme.x * 10.0);
        const double place = std::abs(extreme.x * 10.0 - tenths) < 1e-6 ? tenths / 10.0 : std::round(extreme.x);
        const std::string bare = number3(extreme.value) + std::string(labels::at) + numberTrimmed(place, 1);
        std::vector<std::string> texts;
        if (named) {
            const std::string& name = assessment.load_cases[static_cast<std::size_t>(extreme.case_index)].name;
            texts.push_back(bare + ", " + name);
            if (std::string cut = bare + ", " + elide(name, 24.0, h, font); cut != texts.front())
                texts.push_back(std::move(cut));
        }
        texts.push_back(bare);
        return texts;
    };
    const double worth = 0.02 * span;
    if (span > 0.0) {
        if (highest.value > worth)
            wanted.push_back(
                {highest.x * s, highest.value, extremeTexts(highest), true, highest.value >= -lowest.value ? 0 : 1, 0});
        if (lowest.value < -worth)
            wanted.push_back(
                {lowest.x * s, lowest.value, extremeTexts(lowest), false, highest.value >= -lowest.value ? 1 : 0, 0});
        if (!envelope) {
            // The largest jumps; with many loads the rest is read under the hairline.
            constexpr std::size_t most = 6;
            std::vector<std::size_t> jumps;
            for (std::size_t i = 1; i < samples.size(); ++i) {
                if (samples[i].x - samples[i - 1].x <= 1e-9 && std::abs(samples[i - 1].high - samples[i].high) >= 0.04 * span)
                    jumps.push_back(i);
            }
            std::stable_sort(jumps.begin(), jumps.end(), [&](std::size_t a, std::size_t b) {
                return std::abs(samples[a].high - samples[a - 1].high) > std::abs(samples[b].high - samples[b - 1].high);
            });
            if (jumps.size() > most)
                jumps.resize(most);
            for (const std::size_t i : jumps) {
                const auto note = [&](double value, int side) {
                    if (std::abs(value) > worth && std::abs(value - highest.value) > 1e-6 * span &&
                        std::abs(value - lowest.value) > 1e-6 * span)
                        wanted.push_back({samples[i].x * s, value, {number3(value)}, value > 0.0, 2, side});
                };
                note(samples[i - 1].high, -1);
                note(samples[i].high, 1);
            }
            if (kind == StripKind::deflection || kind == StripKind::slope) {
                const auto index = static_cast<std::size_t>(std::max(chosen, 0));
                for (const Support& support : arrangement.supports) {
                    const double value =
                        valueOf(beam::stateAt(solution, index, support.x_mm, beam::Side::left), kind, view.plane) * unit.factor;
                    if (std::isfinite(value) && std::abs(value) > worth)
                        wanted.push_back({support.x_mm * s, value, {number3(value)}, value > 0.0, 3, 0});
                }
            }
        }
    }
    std::stable_sort(wanted.begin(), wanted.end(), [](const Wanted& a, const Wanted& b) { return a.rank < b.rank; });
    // Height of the curve over an interval, for the clearance of labels.
    const auto clearOfCurve = [&](const Box& box) {
        for (const Path* path : {&upper, &lower}) {
            for (std::size_t i = 1; i < path->vertices.size(); ++i) {
                const Vertex& a = path->vertices[i - 1];
                const Vertex& b = path->vertices[i];
                if (b.x < box.x0 || a.x > box.x1)
                    continue;
                double lowY = std::min(a.y, b.y);
                double highY = std::max(a.y, b.y);
                if (b.x - a.x > 1e-9) {
                    const double t0 = std::clamp((box.x0 - a.x) / (b.x - a.x), 0.0, 1.0);
                    const double t1 = std::clamp((box.x1 - a.x) / (b.x - a.x), 0.0, 1.0);
                    lowY = std::min(a.y + (b.y - a.y) * t0, a.y + (b.y - a.y) * t1);
                    highY = std::max(a.y + (b.y - a.y) * t0, a.y + (b.y - a.y) * t1);
                }
                if (highY > box.y0 - 0.3 && lowY < box.y1 + 0.3)
                    return false;
            }
        }
        return true;
    };
    Placer placer;
    placer.take({-2.0 - 0.8 * h * 4.0, zero_y - 0.4 * h, 0.0, zero_y + 0.4 * h});
    for (const Wanted& one : wanted) {
        const double y = yOf(one.value);
        bool placed = false;
        const auto attempt = [&](const std::string& text, bool relaxed) {
            const double width = textWidth_mm(text, h, font) * (one.rank < 2 ? 1.06 : 1.0);
            for (const double shift : {0.0, h + 0.6}) {
                for (const bool above : {one.above, !one.above}) {
                    for (const int slot : {0, 1, 2, 3, 4}) {
                        if ((one.side > 0 && slot != 1) || (one.side < 0 && slot != 2))
                            continue;
                        const double aside = slot > 2 ? 6.0 : 1.4;
                        double x0 = slot == 0 ? one.x - width / 2.0 : slot % 2 == 1 ? one.x + aside : one.x - aside - width;
                        if (slot == 0)
                            x0 = std::clamp(x0, 0.5, std::max(length - width + 10.0, 0.5));
                        // Clear of the dot, above with the tails of letters.
                        const double y0 = above ? y + 1.7 + shift : y - 1.3 - h - shift;
                        const Box box{x0, y0, x0 + width, y0 + h};
                        if (box.y1 > -0.2 || box.y0 < -height + 0.2 || box.x0 < 0.3 || box.x1 > length + 12.0)
                            continue;
                        if (!placer.isFree(box) || (!relaxed && !clearOfCurve(box)))
                            continue;
                        placer.take(box);
                        if (shift > 0.0 || slot > 2)
                            line(curve, one.x, y, std::clamp(one.x, box.x0, box.x1), above ? box.y0 : box.y1, Stroke::hairline,
                                 Ink::ink2);
                        curve.items.emplace_back(
                            Text{x0, y0, h, text, HAlign::left, VAlign::baseline, 0.0, Ink::ink, font, one.rank < 2, true});
                        return true;
                    }
                }
            }
            return false;
        };
        // A shorter text beside the curve is better than a long one across it; at last the value alone, on its paper ground.
        for (const std::string& text : one.texts)
            placed = placed || attempt(text, false);
        if (!placed && one.rank < 2)
            placed = attempt(one.texts.back(), true);
        if (placed || one.rank < 2)
            curve.items.emplace_back(Circle{one.x, y, 0.7, Stroke::thin, Ink::live, one.rank < 2 ? Ink::live : Ink::paper});
    }
    computeBounds(curve);
    list.groups.push_back(std::move(curve));
    computeBounds(title);
    list.groups.push_back(std::move(title));
    return list;
}

} // namespace shaftwright::drawing
