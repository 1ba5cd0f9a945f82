#pragma once
#include "core/model/family.h"

#include <optional>
#include <string>

namespace shaftwright {

/// Inside of a rolling bearing as the rating methods see it (ISO 281, ISO 76 symbols).
struct InternalGeometry {
    double element_diameter_mm = 0.0;   ///< D_w; rollers: D_we at mid length
    double effective_length_mm = 0.0;   ///< L_we, 0 for balls
    double roller_length_mm = 0.0;      ///< L, overall roller length, 0 for balls
    int elements_per_row = 0;           ///< Z
    int rows = 1;                       ///< i, rows that share a radial load
    double pitch_diameter_mm = 0.0;     ///< D_pw
    double contact_angle_rad = 0.0;     ///< alpha, nominal; pi/2 for axial bearings
    double conformity_inner = 0.0;      ///< groove radius / D_w; 0 for rollers
    double conformity_outer = 0.0;      ///< groove radius / D_w; 0 for rollers; sphere: see self-aligning
    double row_distance_mm = 0.0;       ///< distance of the centres of two rows, 0 for one row
    double raceway_inner_mm = 0.0;      ///< diameter at the groove bottom or of the inner raceway at mid length
    double raceway_outer_mm = 0.0;      ///< diameter at the groove bottom or of the outer raceway at mid length
    double shoulder_inner_mm = 0.0;     ///< diameter of the inner shoulder or rib; 0: none
    double shoulder_outer_mm = 0.0;     ///< inside diameter of the outer shoulder or rib; 0: none
    friend bool operator==(const InternalGeometry&, const InternalGeometry&) = default;
};

/// One bearing as a catalogue states it. Plain value: an arrangement file carries it whole.
struct CatalogueRow {
    std::string catalogue;         ///< "generic", "typed" or the name of an imported catalogue
    std::string catalogue_version;
    std::string designation;       ///< "6208", "NU208", "7208-40", "32008X"; letters and digits without gaps
    std::string series;            ///< "62", "NU2", "72-40", ...
    GeometryClass geometry_class = GeometryClass::deep_groove_ball;

    double bore_mm = 0.0;          ///< d
    double outer_mm = 0.0;         ///< D
    double width_mm = 0.0;         ///< B; tapered: T; axial bearings: H
    double inner_width_mm = 0.0;   ///< tapered: B of the cone; else 0
    double outer_width_mm = 0.0;   ///< tapered: C of the cup; else 0
    double inner_raceway_mm = 0.0; ///< needle: F_w (raceway under the needles); else 0
    double outer_small_end_mm = 0.0; ///< tapered: E, inside diameter of the cup at its small end (ISO 355); 0 unknown
    double chamfer_mm = 0.0;       ///< r_s min, smallest chamfer dimension of the rings; 0 unknown

    double C_N = 0.0;              ///< basic dynamic rating (radial for alpha <= 45 deg, axial above)
    double C0_N = 0.0;             ///< basic static rating
    std::optional<double> Cu_N;    ///< fatigue load limit
    std::optional<double> f0;      ///< ISO 76 factor for X, Y of ball bearings
    double contact_angle_deg = 0.0;

    // What a maker or a typed bearing may state instead of the standard's factors.
    std::optional<double> e, X, Y, Y0;
    std::optional<double> pressure_centre_mm; ///< a, from the back face
    std::optional<double> axial_limit_N;
    std::optional<double> speed_limit_rpm;
    std::optional<double> mass_kg;

    std::optional<InternalGeometry> geometry;
    std::string source;            ///< where the ratings come from; never empty
    Provenance provenance = Provenance::computed;
    std::string note;

    friend bool operator==(const CatalogueRow&, const CatalogueRow&) = default;
};

} // namespace shaftwright
