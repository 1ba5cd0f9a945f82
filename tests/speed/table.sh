#!/usr/bin/env bash
# The speed table: every benchmark program of the build, then whole processes. Called by tests/run --speed.
set -uo pipefail
build=$1
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
program=$build/bin/shaftwright
sample=$root/samples/gearbox-intermediate.shaftwright
status=0
for benchmark in "$build"/bin/*_speed; do
    echo "== $(basename "$benchmark")"
    QT_QPA_PLATFORM=offscreen "$benchmark" || status=1
done

# whole_process NAME BAR_MS COMMAND...: median wall time of 21 runs.
whole_process() {
    local name=$1 bar=$2 start stop times=()
    shift 2
    for _ in $(seq 21); do
        start=$(date +%s%N)
        "$@" >/dev/null 2>&1
        stop=$(date +%s%N)
        times+=($(((stop - start) / 10000)))
    done
    local median
    median=$(printf '%s\n' "${times[@]}" | sort -n | sed -n 11p)
    printf '%-64s median %6d.%02d ms   bar %s ms\n' "$name" $((median / 100)) $((median % 100)) "$bar"
    [ "$median" -le $((bar * 100)) ] || status=1
}
echo "== whole processes"
whole_process "open, analyse, JSON report" 40 "$program" report "$sample" -f json
whole_process "check" 40 "$program" check "$sample"
whole_process "life of one bearing" 40 "$program" life --designation 6208 --radial-N 3500 --speed-rpm 720
[ $status = 0 ] && echo "all bars met" || echo "a bar was missed"
exit $status
