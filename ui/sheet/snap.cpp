#include "ui/sheet/snap.h"

#include "ui/document/subject.h"

#include "core/drawing/sections.h"

#include <algorithm>
#include <cmath>

namespace shaftwright::ui
{

namespace
{

double halfWidth_mm(const Arrangement& arrangement, const Subject& what)
{
    if (what.kind == SubjectKind::part) {
        if (const Part* part = findPart(arrangement, PartId(what.id)))
            return drawing::partHalfLength_mm(*part);
    } else if (what.kind == SubjectKind::support) {
        if (const Support* support = findSupport(arrangement, SupportId(what.id)); support != nullptr && support->bearing)
            return support->bearing->width_mm() / 2.0;
    }
    return 0.0;
}

} // namespace

std::vector<double> snapPlaces(const Arrangement& arrangement, const QString& subject)
{
    const Subject what = subjectOf(subject);
    const double half_mm = halfWidth_mm(arrangement, what);
    std::vector<double> places;
    double x_mm = 0.0;
    for (const Segment& segment : arrangement.shaft.segments) {
        const double end_mm = x_mm + segment.length_mm;
        places.push_back((x_mm + end_mm) / 2.0);
        // A ring stands against a shoulder with its face.
        for (const double face_mm : {x_mm, end_mm}) {
            places.push_back(face_mm + half_mm);
            places.push_back(face_mm - half_mm);
        }
        x_mm = end_mm;
    }
    for (const Part& part : arrangement.parts) {
        if (what.kind != SubjectKind::part || part.id.value != what.id)
            places.push_back(part.x_mm);
    }
    std::erase_if(places, [&](double place) { return place < -1e-9 || place > x_mm + 1e-9; });
    std::sort(places.begin(), places.end());
    return places;
}

std::vector<double> shoulderSnapPlaces(const Arrangement& arrangement, std::size_t index)
{
    std::vector<double> places;
    double x_mm = 0.0;
    for (std::size_t i = 0; i < arrangement.shaft.segments.size(); ++i) {
        x_mm += arrangement.shaft.segments[i].length_mm;
        if (i != index)
            places.push_back(x_mm);
    }
    for (const Part& part : arrangement.parts) {
        const double half_mm = drawing::partHalfLength_mm(part);
        places.push_back(part.x_mm - half_mm);
        places.push_back(part.x_mm + half_mm);
    }
    for (const Support& support : arrangement.supports) {
        if (support.bearing) {
            places.push_back(support.x_mm - support.bearing->width_mm() / 2.0);
            places.push_back(support.x_mm + support.bearing->width_mm() / 2.0);
        }
    }
    std::sort(places.begin(), places.end());
    return places;
}

double snapped(double x_mm, const std::vector<double>& places, double reach_mm, double step_mm)
{
    double best = x_mm, distance = reach_mm;
    bool found = false;
    for (const double place : places) {
        if (std::abs(place - x_mm) <= distance) {
            distance = std::abs(place - x_mm);
            best = place;
            found = true;
        }
    }
    if (found)
        return std::round(best * 1000.0) / 1000.0;
    return std::round(x_mm / step_mm) * step_mm;
}

double dragStep_mm(double px_per_mm)
{
    for (const double step : {10.0, 5.0, 1.0, 0.5, 0.1}) {
        if (step * px_per_mm <= 2.6)
            return step;
    }
    return 0.1;
}

} // namespace shaftwright::ui
