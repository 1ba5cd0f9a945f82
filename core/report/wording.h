#pragma once
#include "core/report/texts.h"

#include <string>

namespace shaftwright::report
{

/// Words and numbers of one report: language and typography in one place.
class Wording
{
public:
    Wording(const Texts& texts, Typography typography) : m_texts(texts), m_typography(typography) {}

    [[nodiscard]] std::string say(const std::string& key, const NamedValues& values = {}) const;
    /// A word used as a value ("oil"), translated when there is a "word.<value>".
    [[nodiscard]] std::string word(const std::string& value) const;
    /// Source of a number; the few sources that are words of ours are translated by "cite.<source>".
    [[nodiscard]] std::string source(const std::string& value) const;

    /// Input numbers: as given, at most six decimals.
    [[nodiscard]] std::string length(double value) const;
    /// Forces in N: whole from 100 on, one decimal from 10 on, two below.
    [[nodiscard]] std::string force(double value_N) const;
    /// N·mm as N·m with four significant figures.
    [[nodiscard]] std::string moment_Nm(double value_Nmm) const;
    /// Lives in h with three significant figures: a life is no more certain than that.
    [[nodiscard]] std::string life(double value_h) const;
    [[nodiscard]] std::string fixed(double value, int decimals) const;
    [[nodiscard]] std::string significant(double value, int digits, bool trim = false) const;

    [[nodiscard]] const Texts& texts() const { return m_texts; }
    [[nodiscard]] Typography typography() const { return m_typography; }

private:
    const Texts& m_texts;
    Typography m_typography;

    [[nodiscard]] std::string finish(std::string plain) const;
};

} // namespace shaftwright::report
