#!/usr/bin/env bash
# What a move of the pointer costs in the real window: milliseconds of CPU of the program's own thread, and of all its threads.
# Needs a built program, and Debian's xvfb and xdotool.
#   docs/pointer.sh PLAN [order]      over the strips and over the piece; with the order of work shown
set -euo pipefail
cd "$(dirname "$0")/.."

program=${PROGRAM:-target/release/firstheat}
plan=$1 view=${2:-plan} moves=100
work=$(mktemp -d)
export FIRSTHEAT_HOME="$work/home" LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY
mkdir -p "$FIRSTHEAT_HOME"
printf '{ "tour_seen": true }\n' >"$FIRSTHEAT_HOME/settings.json"
cp "$plan" "$work/plan.json"
screen="" app=""
clean_up() { for id in $app $screen; do kill "$id" 2>/dev/null || true; done; rm -rf "$work"; }
trap clean_up EXIT

Xvfb -displayfd 3 -screen 0 1366x768x24 -nolisten tcp 3>"$work/display" 2>/dev/null &
screen=$!
until [ -s "$work/display" ]; do sleep 0.1; done
export DISPLAY=":$(cat "$work/display")"
"$program" "$work/plan.json" 2>"$work/log" &
app=$!
xdotool search --sync --onlyvisible --pid "$app" --name "First Heat" windowmove %1 0 0 windowsize %1 1366 768 windowfocus %1 >/dev/null
sleep 3
if [ "$view" = order ]; then xdotool key F9; sleep 3; fi

# Ticks of a hundredth of a second, of one thread or of all.
ticks() { awk '{ sum += $14 + $15 } END { print sum }' "$@"; }
cost() { # NAME X Y STEP
  local own all
  own=$(ticks "/proc/$app/task/$app/stat") all=$(ticks "/proc/$app/task/"*/stat)
  for ((i = 0; i < moves; i++)); do
    xdotool mousemove $(($2 + (i % 50) * $4)) "$3"
    sleep 0.03
  done
  sleep 0.5
  own=$(($(ticks "/proc/$app/task/$app/stat") - own)) all=$(($(ticks "/proc/$app/task/"*/stat) - all))
  awk -v n="$1" -v o="$own" -v a="$all" -v m="$moves" 'BEGIN { printf "%-8s %5.1f ms, all threads %5.1f ms\n", n, o * 10 / m, a * 10 / m }'
}

cost strips 420 260 8
cost piece 420 560 8
