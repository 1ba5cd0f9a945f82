#include "core/units/number_text.h"

#include <catch2/catch.hpp>

using namespace shaftwright;

TEST_CASE("a number is read whole or not at all", "[core][units]")
{
    CHECK(parseDecimal("12.5") == 12.5);
    CHECK(parseDecimal("-1e-3") == -0.001);
    CHECK(parseDecimal("+4") == 4.0);
    for (const char* text : {"", " 1", "1 ", "1,5", "nan", "inf", "-inf", "0x10", "1e999", "1.2.3", "+", "-", "+-1"})
        CHECK_FALSE(parseDecimal(text));
}

TEST_CASE("significant figures keep their count", "[core][units]")
{
    CHECK(significant(13712.4, 3) == "13700");
    CHECK(significant(0.0012345, 3) == "0.00123");
    CHECK(significant(9.996, 3) == "10.0");
    CHECK(significant(0.0, 3) == "0");
    CHECK(significant(-2.5, 2) == "-2.5");
}

TEST_CASE("fixed decimals show no negative zero", "[core][units]")
{
    CHECK(fixedDecimal(-0.001, 2) == "0.00");
    CHECK(fixedDecimal(2.345, 1) == "2.3");
    CHECK(fixedDecimal(-12.0, 0) == "-12");
}

TEST_CASE("long numbers are grouped for reading", "[core][units]")
{
    CHECK(typographic("13700") == "13\u2009700");
    CHECK(typographic("1234") == "1234");
    CHECK(typographic("-1234567.89") == "\u22121\u2009234\u2009567.89");
}
