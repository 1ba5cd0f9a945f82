#include "core/beam/section.h"

#include <numbers>

namespace shaftwright::beam
{

double shearFactor(Shear shear, double poissonRatio, double boreRatio)
{
    const double nu = poissonRatio;
    const double m2 = boreRatio * boreRatio;
    const double sum = 1.0 + m2;
    switch (shear) {
    case Shear::cowper:
        // Cowper, J. Appl. Mech. 33 (1966) 335, hollow circular section.
        return 6.0 * (1.0 + nu) * sum * sum / ((7.0 + 6.0 * nu) * sum * sum + (20.0 + 12.0 * nu) * m2);
    case Shear::hutchinson: {
        // Hutchinson, J. Appl. Mech. 68 (2001) 87; the ring from memory, its solid limit is
        // 6 (1+nu)^2 / (7 + 12 nu + 4 nu^2), its thin limit (1+nu)/(2+nu).
        const double m4 = m2 * m2;
        const double denominator =
            7.0 + 34.0 * m2 + 7.0 * m4 + nu * (12.0 + 48.0 * m2 + 12.0 * m4) + nu * nu * (4.0 + 16.0 * m2 + 4.0 * m4);
        return 6.0 * sum * sum * (1.0 + nu) * (1.0 + nu) / denominator;
    }
    case Shear::nine_tenths:
        return 0.9; // Roark's Formulas, ch. 8: shear factor 10/9 of the solid round section (from memory)
    case Shear::off:
        break;
    }
    return 0.0;
}

double poissonRatio(const Properties& properties)
{
    return properties.modulus_MPa / (2.0 * properties.shear_modulus_MPa) - 1.0;
}

Flexibility sectionFlexibility(const Properties& properties, double outer_mm, double bore_mm)
{
    const double d2 = outer_mm * outer_mm;
    const double b2 = bore_mm * bore_mm;
    const double area = std::numbers::pi / 4.0 * (d2 - b2);
    const double second = std::numbers::pi / 64.0 * (d2 - b2) * (d2 + b2);
    const double kappa = shearFactor(properties.shear, poissonRatio(properties), bore_mm / outer_mm);
    Flexibility f;
    f.axial = 1.0 / (properties.modulus_MPa * area);
    f.bending = 1.0 / (properties.modulus_MPa * second);
    f.torsion = 1.0 / (properties.shear_modulus_MPa * 2.0 * second);
    f.shear = kappa > 0.0 ? 1.0 / (kappa * properties.shear_modulus_MPa * area) : 0.0;
    return f;
}

double volume_mm3(const Piece& piece)
{
    const auto frustum = [](double a, double b) { return a * a + a * b + b * b; };
    return std::numbers::pi / 12.0 * (piece.x1_mm - piece.x0_mm) *
           (frustum(piece.outer0_mm, piece.outer1_mm) - frustum(piece.bore0_mm, piece.bore1_mm));
}

double mass_kg(const Model& model)
{
    double volume = 0.0;
    for (const Piece& piece : model.pieces)
        volume += volume_mm3(piece);
    return model.properties.density_kg_m3 * 1e-9 * volume; // kg/m^3 to kg/mm^3
}

} // namespace shaftwright::beam
