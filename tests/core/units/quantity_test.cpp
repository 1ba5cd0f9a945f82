#include "core/units/quantity.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace shaftwright;
using Q = QuantityKind;

namespace
{

double valueOf(std::string_view text, Q kind)
{
    const auto parsed = parseQuantity(text, kind);
    INFO(text);
    REQUIRE(std::holds_alternative<double>(parsed));
    return std::get<double>(parsed);
}

QuantityError errorOf(std::string_view text, Q kind)
{
    const auto parsed = parseQuantity(text, kind);
    INFO(text);
    REQUIRE(std::holds_alternative<QuantityError>(parsed));
    return std::get<QuantityError>(parsed);
}

// Products of two doubles are rounded once or twice.
auto is(double value)
{
    return Catch::Matchers::WithinRel(value, 1e-14);
}

} // namespace

TEST_CASE("plain numbers are in the base unit", "[core][units]")
{
    CHECK(valueOf("12.5", Q::length_mm) == 12.5);
    CHECK(valueOf(" 12,5 ", Q::length_mm) == 12.5);
    CHECK(valueOf("-3", Q::force_N) == -3.0);
    CHECK(valueOf("\u22123", Q::force_N) == -3.0);
    CHECK(valueOf("+3", Q::force_N) == 3.0);
    CHECK(valueOf(".5", Q::number) == 0.5);
    CHECK(valueOf("5.", Q::number) == 5.0);
    CHECK(valueOf("1e3", Q::number) == 1000.0);
    CHECK(valueOf("1.5E-2", Q::number) == 0.015);
    CHECK(valueOf("-0", Q::number) == 0.0);
    CHECK_FALSE(std::signbit(valueOf("-0", Q::number)));
}

TEST_CASE("units are converted to the base unit", "[core][units]")
{
    // International inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s2: exact by definition.
    CHECK_THAT(valueOf("2.5 in", Q::length_mm), is(63.5));
    CHECK_THAT(valueOf("2\"", Q::length_mm), is(50.8));
    CHECK_THAT(valueOf("3cm", Q::length_mm), is(30.0));
    CHECK_THAT(valueOf("0.2 m", Q::length_mm), is(200.0));
    CHECK_THAT(valueOf("25 \u00b5m", Q::length_mm), is(0.025));
    CHECK_THAT(valueOf("25 \u03bcm", Q::length_mm), is(0.025));
    CHECK_THAT(valueOf("25um", Q::length_mm), is(0.025));
    CHECK_THAT(valueOf("1.2 kN", Q::force_N), is(1200.0));
    CHECK_THAT(valueOf("1 lbf", Q::force_N), is(4.4482216152605));
    CHECK_THAT(valueOf("3 N\u00b7m", Q::moment_Nmm), is(3000.0));
    CHECK_THAT(valueOf("3 Nm", Q::moment_Nmm), is(3000.0));
    CHECK_THAT(valueOf("3 N*m", Q::moment_Nmm), is(3000.0));
    CHECK_THAT(valueOf("0.5 kNm", Q::moment_Nmm), is(500000.0));
    CHECK_THAT(valueOf("7 N\u00b7mm", Q::moment_Nmm), is(7.0));
    CHECK_THAT(valueOf("10 lbf\u00b7in", Q::moment_Nmm), is(10.0 * 4.4482216152605 * 25.4));
    CHECK_THAT(valueOf("750 W", Q::power_kW), is(0.75));
    CHECK_THAT(valueOf("1 hp", Q::power_kW), is(0.74569987158227022));
    CHECK_THAT(valueOf("1500 1/min", Q::speed_rpm), is(1500.0));
    CHECK_THAT(valueOf("1500 rpm", Q::speed_rpm), is(1500.0));
    CHECK_THAT(valueOf("1500 min\u207b\u00b9", Q::speed_rpm), is(1500.0));
    CHECK_THAT(valueOf("25 1/s", Q::speed_rpm), is(1500.0));
    CHECK_THAT(valueOf("2 d", Q::life_h), is(48.0));
    CHECK_THAT(valueOf("95 %", Q::percent), is(95.0));
    CHECK_THAT(valueOf("25 %", Q::number), is(0.25));
    CHECK_THAT(valueOf("10 lb", Q::mass_kg), is(4.5359237));
    CHECK_THAT(valueOf("2 t", Q::mass_kg), is(2000.0));
    CHECK_THAT(valueOf("212 \u00b0F", Q::temperature_C), is(100.0));
    CHECK_THAT(valueOf("-40 \u00b0F", Q::temperature_C), is(-40.0));
    CHECK_THAT(valueOf("300 K", Q::temperature_C), is(26.85));
    CHECK_THAT(valueOf("70 \u00b0C", Q::temperature_C), is(70.0));
    CHECK_THAT(valueOf("90\u00b0", Q::angle_deg), is(90.0));
    CHECK_THAT(valueOf("90 deg", Q::angle_deg), is(90.0));
    CHECK_THAT(valueOf("1.5707963267948966 rad", Q::angle_deg), is(90.0));
    CHECK_THAT(valueOf("1 mrad", Q::angle_deg), is(0.0572957795130823));
    CHECK_THAT(valueOf("0.001 rad", Q::tilt_mrad), is(1.0));
    CHECK_THAT(valueOf("1 deg", Q::tilt_mrad), is(17.4532925199433));
    CHECK_THAT(valueOf("3'", Q::tilt_mrad), is(0.872664625997165));
    CHECK_THAT(valueOf("200 N/\u00b5m", Q::stiffness_N_per_mm), is(200000.0));
    CHECK_THAT(valueOf("5 kN/m", Q::line_load_N_per_mm), is(5.0));
}

TEST_CASE("fields do arithmetic", "[core][units]")
{
    CHECK(valueOf("12+3", Q::length_mm) == 15.0);
    CHECK(valueOf("12 + 3 mm", Q::length_mm) == 15.0);
    CHECK_THAT(valueOf("1 in + 1 cm", Q::length_mm), is(35.4));
    CHECK(valueOf("3*(4-1) mm", Q::length_mm) == 9.0);
    CHECK(valueOf("3\u00d7(4-1)cm", Q::length_mm) == 90.0);
    CHECK(valueOf("(1+2)*(3+4)", Q::number) == 21.0);
    CHECK(valueOf("2+3*4-6/2", Q::number) == 11.0);
    CHECK(valueOf("10-2-3", Q::number) == 5.0);
    CHECK(valueOf("100/5/2", Q::number) == 10.0);
    CHECK(valueOf("-(2-5)", Q::number) == 3.0);
    CHECK(valueOf("2*-3", Q::number) == -6.0);
    CHECK(valueOf("1 kN/2", Q::force_N) == 500.0);
    CHECK(valueOf("1/2 kN", Q::force_N) == 500.0);
    CHECK(valueOf("1,5+0,5", Q::length_mm) == 2.0);
    CHECK(valueOf("13 700", Q::life_h) == 13700.0);
    CHECK(valueOf("13\u2009700 h", Q::life_h) == 13700.0);
    CHECK(valueOf("1 000 000", Q::number) == 1e6);
}

TEST_CASE("what cannot be meant is refused with a reason", "[core][units]")
{
    CHECK(errorOf("", Q::number).code == "empty");
    CHECK(errorOf("   ", Q::number).code == "empty");
    CHECK(errorOf("abc", Q::number).code == "not_a_number");
    CHECK(errorOf("mm", Q::length_mm).code == "not_a_number");
    CHECK(errorOf("1+", Q::number).code == "not_a_number");
    CHECK(errorOf("1 2", Q::number).code == "not_a_number");
    CHECK(errorOf("1.234,5", Q::number).code == "not_a_number");
    CHECK(errorOf("1..2", Q::number).code == "not_a_number");
    CHECK(errorOf("nan", Q::number).code == "not_a_number");
    CHECK(errorOf("3 furlong", Q::length_mm).code == "unknown_unit");
    CHECK(errorOf("3 furlong", Q::length_mm).detail == "furlong");
    CHECK(errorOf("3 mmm", Q::length_mm).code == "unknown_unit");
    CHECK(errorOf("3 kN", Q::length_mm).code == "wrong_unit");
    CHECK(errorOf("3 kN", Q::length_mm).detail == "kN");
    CHECK(errorOf("3 mm", Q::number).code == "wrong_unit");
    CHECK(errorOf("3 N/mm", Q::force_N).code == "wrong_unit");
    CHECK(errorOf("3 Nm", Q::force_N).code == "wrong_unit");
    CHECK(errorOf("2 mm * 3 mm", Q::length_mm).code == "wrong_unit");
    CHECK(errorOf("1 + 2 kN", Q::force_N).code == "wrong_unit"); // 2001 N or 3 kN?
    CHECK(errorOf("20 \u00b0C + 10 K", Q::temperature_C).code == "wrong_unit");
    CHECK(errorOf("(1+2", Q::number).code == "unbalanced");
    CHECK(errorOf("1+2)", Q::number).code == "unbalanced");
    CHECK(errorOf("1/0", Q::number).code == "divide_by_zero");
    CHECK(errorOf("1/(2-2) mm", Q::length_mm).code == "divide_by_zero");
    CHECK(errorOf("1e300", Q::number).code == "too_large");
    CHECK(errorOf("1e999", Q::number).code == "too_large");
    CHECK(errorOf(std::string(5000, '('), Q::number).code == "too_large");
    CHECK(errorOf(std::string(900, '('), Q::number).code == "too_large");
    CHECK(errorOf(std::string(900, '-'), Q::number).code == "too_large");
}

TEST_CASE("any bytes are survived", "[core][units]")
{
    const std::string bytes = "0123456789+-*/()., eEmNkW%\"'\xc2\xb5\xff\x00 h";
    unsigned state = 7;
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (int j = 0; j < 12; ++j) {
            state = state * 1664525u + 1013904223u;
            text += bytes[(state >> 16u) % bytes.size()];
        }
        const auto parsed = parseQuantity(text, static_cast<Q>(i % 14));
        if (const double* value = std::get_if<double>(&parsed))
            REQUIRE(std::isfinite(*value));
    }
}

TEST_CASE("the name of every base unit is read as itself", "[core][units]")
{
    for (int i = 0; i < 14; ++i) {
        const Q kind = static_cast<Q>(i);
        CHECK(valueOf("7 " + std::string(unitName(kind)), kind) == 7.0);
    }
}
