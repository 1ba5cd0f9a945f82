#!/usr/bin/env bash
# The long checks of tests/run --all: sanitizers over core and command line, every core file through clang, clang-tidy,
# the laws on 100,000 drawn arrangements. Prints one line a check.
set -uo pipefail
root=$1
status=0
result() { printf '%-44s %s\n' "$1" "$2"; }

build=${SHAFTWRIGHT_SANITIZE_BUILD:-$root/build-sanitize}
mkdir -p "$build"
if cmake -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=RelWithDebInfo -DSHAFTWRIGHT_UI=OFF -DSHAFTWRIGHT_SANITIZE=address,undefined \
    >"$build/configure.log" 2>&1 && ninja -C "$build" >"$build/build.log" 2>&1; then
    for program in "$build"/bin/test_*; do
        [ "$(basename "$program")" = test_solid ] && continue # runs another program
        if (cd "$build" && "$program" >"$build/$(basename "$program").log" 2>&1); then
            result "sanitized $(basename "$program")" ok
        else
            result "sanitized $(basename "$program")" FAILED
            tail -n 40 "$build/$(basename "$program").log"
            status=1
        fi
    done
else
    tail -n 40 "$build/build.log" "$build/configure.log"
    result "sanitized build" FAILED
    status=1
fi

clang=0
while read -r file; do
    clang++ -std=c++20 -fsyntax-only -Wall -Wextra -I"$root" -isystem /usr/include/eigen3 "$file" || clang=1
done < <(find "$root/core" -name '*.cpp' | sort)
[ $clang = 0 ] && result "core compiles with clang" ok || { result "core compiles with clang" FAILED; status=1; }

if command -v clang-tidy >/dev/null; then
    (cd "$root" && find core app -name '*.cpp' -print0 | xargs -0 -P "$(nproc)" -n 8 clang-tidy -p "$build" --quiet 2>/dev/null) >"$build/tidy.log"
    result "clang-tidy remarks (read $build/tidy.log)" "$(grep -c 'warning:' "$build/tidy.log")"
fi

laws=${SHAFTWRIGHT_TEST_BUILD:-$root/build-tests}/bin/test_laws
if [ -x "$laws" ]; then
    SHAFTWRIGHT_LAWS=${SHAFTWRIGHT_LAWS:-100000} "$laws" >"$build/laws.log" 2>&1 && result "laws, long run" ok || { result "laws, long run" FAILED; tail -n 40 "$build/laws.log"; status=1; }
fi
exit $status
