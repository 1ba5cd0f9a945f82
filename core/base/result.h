#pragma once
#include "core/base/finding.h"

#include <cassert>
#include <utility>
#include <variant>

namespace shaftwright {

/// A value, or the finding that says why there is none.
template <class T>
class Result {
public:
    Result(T value) : m_state(std::move(value)) {}
    Result(Finding finding) : m_state(std::move(finding)) {}

    [[nodiscard]] bool ok() const { return std::holds_alternative<T>(m_state); }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const T& value() const
    {
        assert(ok());
        return std::get<T>(m_state);
    }
    [[nodiscard]] T& value()
    {
        assert(ok());
        return std::get<T>(m_state);
    }
    [[nodiscard]] const Finding& finding() const
    {
        assert(!ok());
        return std::get<Finding>(m_state);
    }
    const T& operator*() const { return value(); }
    const T* operator->() const { return &value(); }

private:
    std::variant<T, Finding> m_state;
};

} // namespace shaftwright
