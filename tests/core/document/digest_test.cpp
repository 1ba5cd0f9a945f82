#include "core/document/document.h"
#include "core/edit/edit.h"
#include "tests/support/rich_arrangement.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace shaftwright;

TEST_CASE("the digest is SHA-256", "[core][document]")
{
    // FIPS 180-2, appendix B (from memory); the same as `printf abc | sha256sum`.
    CHECK(sha256Of("abc") == "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256Of("") == "sha256:e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(sha256Of(std::string(1000000, 'a')) == "sha256:cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("canonical inputs of a small arrangement are known to the byte", "[core][document]")
{
    Arrangement arrangement;
    Segment segment;
    segment.id = SegmentId("S1");
    segment.length_mm = 100.5;
    segment.outer_mm = 1e-7;
    arrangement.shaft.segments = {segment};
    CHECK(canonicalInputs(arrangement) ==
          R"({"format":"shaftwright-arrangement","format_version":1,"shaft":{"material":{"name":"steel"},)"
          R"("segments":[{"id":"S1","length_mm":100.5,"outer_mm":1e-7}]}})");
    // The same text through sha256sum of the coreutils.
    CHECK(digestOf(arrangement) == "sha256:9415cb8b72e564132952e9fcae54c222ad95dbac50480dbedabc7e0bd49bf442");
}

TEST_CASE("remarks, acceptances and revisions leave the digest alone, every input changes it", "[core][document]")
{
    const Arrangement rich = test::richArrangement();
    Arrangement changed = rich;
    changed.remarks.clear();
    changed.acceptances.front().reason = "other";
    changed.revisions.clear();
    CHECK(digestOf(changed) == digestOf(rich));
    changed.supports.front().x_mm += 1e-9;
    CHECK(digestOf(changed) != digestOf(rich));
    changed = rich;
    changed.extra_json = "{}";
    CHECK(digestOf(changed) != digestOf(rich));
}

TEST_CASE("spaces inside extra do not change the digest", "[core][document]")
{
    Arrangement one = test::richArrangement();
    one.extra_json = R"({"b":1.50,"a":[1,2]})";
    Arrangement other = one;
    other.extra_json = "{ \"a\" : [ 1 , 2.0 ],\n\"b\" : 15e-1 }";
    CHECK(digestOf(one) == digestOf(other));
    CHECK(writeArrangement(one) != writeArrangement(other));
}

TEST_CASE("the canonical inputs are a readable document themselves", "[core][document]")
{
    Arrangement arrangement = test::richArrangement();
    arrangement.remarks.clear();
    arrangement.acceptances.clear();
    arrangement.revisions.clear();
    const ReadResult read = readArrangement(canonicalInputs(arrangement), "inputs");
    REQUIRE(read.ok());
    CHECK(canonicalInputs(*read.arrangement) == canonicalInputs(arrangement));
}

TEST_CASE("the digest of a catalogue depends on its rows", "[core][document]")
{
    Catalogue catalogue;
    catalogue.rows = {test::richRow()};
    const std::string first = digestOf(catalogue);
    CHECK(first.size() == 7 + 64);
    catalogue.rows.front().C_N += 1.0;
    CHECK(digestOf(catalogue) != first);
}
