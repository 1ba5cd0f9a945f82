#!/usr/bin/env bash
# A journey through the real window on a screen of its own: open, click, drag, type, undo, save under another name, close with
# unsaved changes. Mouse and keys come from outside, results are read from the saved files.
#   xvfb_journey.sh PROGRAM SHEET_PIXEL SAMPLE
# Screenshots go to a folder that is printed; set KEEP_SCREENSHOTS to a folder to choose it.
set -u
program=$1 pixel=$2 sample=$3
assertions=0
work=$(mktemp -d)
shots=${KEEP_SCREENSHOTS:-$work/screenshots}
mkdir -p "$shots" "$work/home/.config" "$work/run"
chmod 700 "$work/run"
children=()

finish() {
    for child in "${children[@]}"; do kill "$child" 2>/dev/null; done
    wait 2>/dev/null
    [ -n "${KEEP_SCREENSHOTS:-}" ] || [ "${failed:-1}" = 1 ] || rm -rf "$work"
}
trap finish EXIT

fail() {
    failed=1
    shot failure
    echo "xvfb_journey: $1 (screenshots in $shots)"
    echo "test cases: 1 | 1 failed"
    exit 1
}
holds() { # WHAT COMMAND...
    local what=$1
    shift
    "$@" || fail "$what"
    assertions=$((assertions + 1))
}
shot() { command -v import >/dev/null && [ -n "${DISPLAY:-}" ] && import -window root "$shots/$1.png" 2>/dev/null; true; }

for tool in Xvfb openbox xdotool; do
    if ! command -v "$tool" >/dev/null; then
        echo "skipped: xvfb_journey ($tool is not installed)"
        echo "All tests passed (0 assertions in 0 test cases)"
        failed=0
        exit 0
    fi
done

# --- A screen with a window manager ---
Xvfb -displayfd 6 -screen 0 1600x1000x24 -dpi 96 -nolisten tcp 6>"$work/display" 2>"$work/xvfb.log" &
children+=($!)
for _ in $(seq 100); do [ -s "$work/display" ] && break; sleep 0.1; done
[ -s "$work/display" ] || fail "the screen did not start: $(cat "$work/xvfb.log")"
export DISPLAY=":$(cat "$work/display")" HOME="$work/home" XDG_CONFIG_HOME="$work/home/.config"
export XDG_RUNTIME_DIR="$work/run" QT_QPA_PLATFORM=xcb LC_ALL=C.UTF-8
unset WAYLAND_DISPLAY DBUS_SESSION_BUS_ADDRESS
openbox >/dev/null 2>&1 &
children+=($!)
sleep 0.5

# The value of a number key of the part or support with this id.
value() { # FILE ID KEY
    awk -v id="$2" -v key="$3" '
        $0 ~ "\"id\": \"" id "\"" { seen = 1 }
        seen && $0 ~ "\"" key "\":" { sub(".*\"" key "\": *", ""); sub("[ ,}].*", ""); print; exit }' "$1"
}
between() { awk -v v="$1" -v a="$2" -v b="$3" 'BEGIN { exit !(v >= a && v <= b) }'; }
appears() { for _ in $(seq 100); do [ -s "$1" ] && return 0; sleep 0.1; done; return 1; }
window_named() { # PATTERN -> id
    for _ in $(seq 100); do
        local found
        found=$(xdotool search --onlyvisible --name "$1" 2>/dev/null | tail -n 1)
        [ -n "$found" ] && { echo "$found"; return 0; }
        sleep 0.1
    done
    return 1
}
keys() { xdotool key --clearmodifiers --delay 30 "$@"; sleep 0.3; }
save_as() { # FILE
    keys ctrl+shift+s
    local dialog
    dialog=$(window_named '^Save as') || fail "no dialog for saving"
    xdotool windowfocus --sync "$dialog" 2>/dev/null
    keys ctrl+a
    xdotool type --delay 15 "$1"
    sleep 0.2
    shot "save-$(basename "$1" .shaftwright)"
    keys Return
    appears "$1" || fail "$1 was not saved"
    sleep 0.3
}

# --- Open ---
file=$work/shaft.shaftwright
cp "$sample" "$file"
before_mm=$(value "$file" G1 x_mm)
"$program" "$file" >"$work/program.log" 2>&1 &
running=$!
children+=("$running")
window=$(window_named 'Shaftwright$') || fail "no window: $(cat "$work/program.log")"
xdotool windowactivate --sync "$window" 2>/dev/null
xdotool windowsize --sync "$window" 1440 900 2>/dev/null
sleep 1
shot opened
holds "the title of the window names the arrangement" \
    bash -c "xdotool getwindowname $window | grep -q 'Intermediate shaft'"

# --- Click and drag the gear by 20 mm to the right, in steps as a hand does ---
read -r x y px_per_mm < <("$pixel" "$file" 1440 900 "$before_mm" 75)
[ -n "${px_per_mm:-}" ] || fail "where the gear lies is not known"
xdotool mousemove --window "$window" "$x" "$y" click 1
sleep 0.4
shot clicked
way=$(awk -v p="$px_per_mm" 'BEGIN { printf "%d", 20 * p + 0.5 }')
xdotool mousemove --window "$window" "$x" "$y" mousedown 1
for step in 1 2 3 4 5 6 7 8; do
    xdotool mousemove --window "$window" $((x + way * step / 8)) "$y"
    sleep 0.05
done
shot dragging
xdotool mouseup 1
sleep 0.4
shot dragged
save_as "$work/dragged.shaftwright"
moved_mm=$(value "$work/dragged.shaftwright" G1 x_mm)
# Half a snapping width of 6 px, in mm, beside the way.
holds "the gear moved by about 20 mm: from $before_mm to $moved_mm" between "$moved_mm" \
    "$(awk -v b="$before_mm" -v p="$px_per_mm" 'BEGIN { print b + 20 - 7 / p }')" "$(awk -v b="$before_mm" -v p="$px_per_mm" 'BEGIN { print b + 20 + 7 / p }')"
holds "nothing else changed by the drag" bash -c "[ \$(diff '$file' '$work/dragged.shaftwright' | grep -c '^[<>]') = 2 ]"

# --- Type a value into its cell of the table of parts ---
xdotool windowfocus --sync "$window" 2>/dev/null
keys F9
shot tables
keys Home
# Columns: id, kind, name, place.
keys Right Right Right
keys F2
keys ctrl+a
xdotool type --delay 30 '70+2.5'
keys Return
shot typed
save_as "$work/typed.shaftwright"
holds "the typed place is in the file" [ "$(value "$work/typed.shaftwright" G1 x_mm)" = 72.5 ]

# --- Undo ---
xdotool windowfocus --sync "$window" 2>/dev/null
keys ctrl+z
shot undone
save_as "$work/undone.shaftwright"
holds "undo takes the typed place back and leaves the drag" cmp -s "$work/undone.shaftwright" "$work/dragged.shaftwright"
keys ctrl+z
save_as "$work/back.shaftwright"
holds "the second undo gives the opened arrangement" [ "$(value "$work/back.shaftwright" G1 x_mm)" = "$before_mm" ]
holds "the opened file was never written" cmp -s "$file" "$sample"

# --- Close with unsaved changes: stay, then leave them ---
keys ctrl+shift+z
keys ctrl+q
sleep 0.5
shot question
holds "the program asks before it leaves changes" kill -0 "$running"
keys Escape
holds "Escape stays" kill -0 "$running"
shot stayed
keys ctrl+q
sleep 0.3
keys alt+l
for _ in $(seq 50); do kill -0 "$running" 2>/dev/null || break; sleep 0.1; done
if kill -0 "$running" 2>/dev/null; then
    # The buttons have no letter of their own: go to the second one.
    keys Tab
    keys space
    for _ in $(seq 50); do kill -0 "$running" 2>/dev/null || break; sleep 0.1; done
fi
kill -0 "$running" 2>/dev/null && { shot still-open; fail "the window did not close"; }
wait "$running"
holds "the program ends with 0" [ $? = 0 ]
holds "the last saved file keeps what was saved" [ "$(value "$work/back.shaftwright" G1 x_mm)" = "$before_mm" ]
holds "the program said nothing on its way" bash -c "! [ -s '$work/program.log' ]"

failed=0
[ -z "${KEEP_SCREENSHOTS:-}" ] || echo "screenshots: $shots"
echo "All tests passed ($assertions assertions in 1 test case)"
