#pragma once
// Timing for the benchmarks: many samples, median, 99th percentile and worst. One sample may repeat the work, so that short
// work is not measured by the clock's own grain.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <vector>

namespace shaftwright::speed
{

struct Timing {
    double median_us = 0.0, p99_us = 0.0, worst_us = 0.0;
};

/// Time of one call of `work`, over `samples` samples of `repeats` calls; a tenth of the samples runs unmeasured first.
template <class Work> Timing measure(int samples, int repeats, Work&& work)
{
    std::vector<double> times;
    times.reserve(static_cast<std::size_t>(samples));
    for (int k = -samples / 10; k < samples; ++k) {
        const auto start = std::chrono::steady_clock::now();
        for (int r = 0; r < repeats; ++r)
            work();
        const auto stop = std::chrono::steady_clock::now();
        if (k >= 0)
            times.push_back(std::chrono::duration<double, std::micro>(stop - start).count() / repeats);
    }
    std::sort(times.begin(), times.end());
    const auto at = [&](double share) { return times[static_cast<std::size_t>(share * (double(times.size()) - 1.0))]; };
    return {at(0.5), at(0.99), times.back()};
}

inline void print(const char* name, const Timing& t)
{
    std::printf("%-64s median %9.2f us   p99 %9.2f us   worst %9.2f us\n", name, t.median_us, t.p99_us, t.worst_us);
}

} // namespace shaftwright::speed
