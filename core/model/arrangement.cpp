#include "core/model/arrangement.h"

#include <algorithm>

namespace shaftwright {

double Shaft::length_mm() const
{
    double length = 0.0;
    for (const Segment& segment : segments)
        length += segment.length_mm;
    return length;
}

const char* kindOf(const Part& part)
{
    static constexpr const char* names[] = {"cylindrical_gear", "bevel_gear", "worm",     "worm_wheel", "belt_pulley",    "chain_sprocket",
                                            "coupling",         "impeller",   "weight",   "point_load", "distributed_load"};
    static_assert(std::variant_size_v<PartBody> == std::size(names));
    return names[part.body.index()];
}

std::string BearingChoice::designation() const
{
    if (rows.empty())
        return {};
    const bool alike = std::all_of(rows.begin(), rows.end(), [&](const SetRow& set_row) {
        return set_row.row.designation == rows.front().row.designation;
    });
    if (rows.size() == 1)
        return rows.front().row.designation;
    if (alike) {
        std::string text = std::to_string(rows.size()) + "x" + rows.front().row.designation;
        switch (arrangement) {
        case SetArrangement::O:
            return text + " O";
        case SetArrangement::X:
            return text + " X";
        case SetArrangement::tandem:
            return text + " T";
        case SetArrangement::none:
            return text;
        }
    }
    std::string text;
    for (const SetRow& set_row : rows) {
        if (!text.empty())
            text += " + ";
        text += set_row.row.designation;
    }
    return text;
}

double BearingChoice::width_mm() const
{
    double width = 0.0;
    for (const SetRow& set_row : rows)
        width += set_row.row.width_mm;
    return width;
}

namespace {

template <class Container, class Id>
auto findById(const Container& container, const Id& id) -> decltype(container.data())
{
    const auto it = std::find_if(container.begin(), container.end(), [&](const auto& item) { return item.id == id; });
    return it == container.end() ? nullptr : &*it;
}

} // namespace

const Part* findPart(const Arrangement& arrangement, const PartId& id)
{
    return findById(arrangement.parts, id);
}

const Support* findSupport(const Arrangement& arrangement, const SupportId& id)
{
    return findById(arrangement.supports, id);
}

const Segment* findSegment(const Arrangement& arrangement, const SegmentId& id)
{
    return findById(arrangement.shaft.segments, id);
}

const LoadCase* findCase(const Arrangement& arrangement, const CaseId& id)
{
    return findById(arrangement.duty.load_cases, id);
}

double segmentStart_mm(const Shaft& shaft, std::size_t index)
{
    double x_mm = 0.0;
    for (std::size_t i = 0; i < std::min(index, shaft.segments.size()); ++i)
        x_mm += shaft.segments[i].length_mm;
    return x_mm;
}

double shaftDiameterAt_mm(const Shaft& shaft, double x_mm, bool smaller)
{
    constexpr double edge_mm = 1e-6;
    double found_mm = 0.0;
    double start_mm = 0.0;
    for (const Segment& segment : shaft.segments) {
        const double end_mm = start_mm + segment.length_mm;
        if (segment.length_mm > 0.0 && x_mm >= start_mm - edge_mm && x_mm <= end_mm + edge_mm) {
            const double share = std::clamp((x_mm - start_mm) / segment.length_mm, 0.0, 1.0);
            const double here_mm = segment.outer_mm + share * (segment.outerRight_mm() - segment.outer_mm);
            if (found_mm == 0.0)
                found_mm = here_mm;
            else
                found_mm = smaller ? std::min(found_mm, here_mm) : std::max(found_mm, here_mm);
        }
        start_mm = end_mm;
    }
    return found_mm;
}

} // namespace shaftwright
