#pragma once
// How many arrangements a law is tried on, and with which seed.

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>
#include <string>

namespace shaftwright::test
{

/// Runs a property. SHAFTWRIGHT_LAWS sets the number of arrangements a law (default 300); the seed is fixed. RC_PARAMS, as
/// rapidcheck documents it ("seed=... max_success=..."), goes before both.
template <class Property> void law(const std::string& name, const Property& property)
{
    static const bool configured = [] {
        if (std::getenv("RC_PARAMS") == nullptr) {
            const char* count = std::getenv("SHAFTWRIGHT_LAWS");
            const int laws = count == nullptr ? 300 : std::max(1, std::atoi(count));
            setenv("RC_PARAMS", ("seed=20261125 max_success=" + std::to_string(laws)).c_str(), 1);
        }
        return true;
    }();
    (void)configured;
    CHECK(rc::check(name, property));
}

} // namespace shaftwright::test
