#include "core/document/document.h"
#include "core/units/number_text.h"

#include <cmath>
#include <stdexcept>

namespace shaftwright {
namespace {

/// Appends fields as text, each ended by a character that no field holds.
class FieldText {
public:
    std::string text;

    void add(const std::string& word)
    {
        text += word;
        text += '\x1f';
    }
    void add(double value)
    {
        if (!std::isfinite(value))
            throw std::domain_error("a catalogue row holds a number that is not finite");
        add(shortestDecimal(value));
    }
    void add(const std::optional<double>& value)
    {
        if (value)
            add(*value);
        else
            add(std::string());
    }
    void endRow() { text += '\n'; }
};

} // namespace

std::string digestOf(const Catalogue& catalogue)
{
    // A plain list of fields, not the rows' JSON: every JSON report states this digest, and building trees of two thousand
    // rows would cost more than the analysis.
    FieldText fields;
    fields.text.reserve(catalogue.rows.size() * 512);
    fields.add(catalogue.name);
    fields.add(catalogue.version);
    fields.endRow();
    for (const CatalogueRow& row : catalogue.rows) {
        fields.add(row.designation);
        fields.add(row.series);
        fields.add(std::string(toString(row.geometry_class)));
        for (const double value : {row.bore_mm, row.outer_mm, row.width_mm, row.inner_width_mm, row.outer_width_mm, row.inner_raceway_mm,
                                   row.outer_small_end_mm, row.chamfer_mm, row.C_N, row.C0_N, row.contact_angle_deg})
            fields.add(value);
        for (const std::optional<double>& value : {row.Cu_N, row.f0, row.e, row.X, row.Y, row.Y0, row.pressure_centre_mm, row.axial_limit_N,
                                                   row.speed_limit_rpm, row.mass_kg})
            fields.add(value);
        if (row.geometry) {
            const InternalGeometry& inside = *row.geometry;
            for (const double value :
                 {inside.element_diameter_mm, inside.effective_length_mm, inside.roller_length_mm, double(inside.elements_per_row),
                  double(inside.rows), inside.pitch_diameter_mm, inside.contact_angle_rad, inside.conformity_inner, inside.conformity_outer,
                  inside.row_distance_mm, inside.raceway_inner_mm, inside.raceway_outer_mm, inside.shoulder_inner_mm, inside.shoulder_outer_mm})
                fields.add(value);
        }
        fields.add(row.source);
        fields.add(std::string(toString(row.provenance)));
        fields.add(row.note);
        fields.endRow();
    }
    return sha256Of(fields.text);
}

} // namespace shaftwright
