#!/usr/bin/env bash
# Makes the pictures of the readme and the handbook from the real program, on a screen of its own.
# Needs a built program, and Debian's xvfb, xdotool, imagemagick and poppler-utils.
#   docs/pictures.sh [NAME…]      all of them, or only the named ones
# Look at each picture afterwards: nobody else does.
set -euo pipefail
cd "$(dirname "$0")/.."

# Whichever was built last.
program=target/release/firstheat
[ target/debug/firstheat -nt "$program" ] && program=target/debug/firstheat
out=docs/pictures
width=1366 height=768
mkdir -p "$out"

work=$(mktemp -d)
export FIRSTHEAT_HOME="$work/home"
unset WAYLAND_DISPLAY
screen="" app=""
stop() { [ -z "$1" ] || { kill "$1" 2>/dev/null || true; wait "$1" 2>/dev/null || true; }; }
clean_up() { stop "$app"; stop "$screen"; rm -rf "$work"; }
trap clean_up EXIT

Xvfb -displayfd 3 -screen 0 "${width}x${height}x24" -nolisten tcp 3>"$work/display" 2>/dev/null &
screen=$!
until [ -s "$work/display" ]; do sleep 0.1; done
export DISPLAY=":$(cat "$work/display")"

wanted=("$@")
is_wanted() { [ "${#wanted[@]}" -eq 0 ] || printf '%s\n' "${wanted[@]}" | grep -qx "$1"; }

# start LOOK TEXT_SIZE PLAN: opens the editor with a fresh home, without the tour.
start() {
  rm -rf "$FIRSTHEAT_HOME" && mkdir -p "$FIRSTHEAT_HOME"
  printf '{ "look": "%s", "text_size": %s, "tour_seen": true }\n' "$1" "$2" >"$FIRSTHEAT_HOME/settings.json"
  # A copy, so that nothing done for a picture reaches the plan itself.
  cp "$3" "$work/$(basename "$3")"
  "$program" "$work/$(basename "$3")" 2>"$work/log" &
  app=$!
  xdotool search --sync --pid "$app" --name "First Heat" windowfocus >/dev/null 2>&1 ||
    xdotool search --sync --name "First Heat" windowfocus >/dev/null
  sleep 3
  rest
}

# The pointer out of the way.
rest() { xdotool mousemove $((width - 4)) $((height - 4)); sleep 0.7; }
keys() { for key in "$@"; do xdotool key --clearmodifiers "$key"; sleep 0.3; done; }
finish() { stop "$app"; app=""; }

# shot NAME: keeps the screen as it is.
shot() {
  sleep 0.8
  import -window root "$work/$1.png"
  keep "$work/$1.png" "$1"
}

# keep FILE NAME [WIDTH]: few colors and no extras keep a picture small.
keep() {
  convert "$1" ${3:+-resize "${3}x"} -strip +dither -colors 160 -define png:compression-level=9 "PNG8:$out/$2.png"
  echo "$out/$2.png  $(stat -c %s "$out/$2.png") bytes"
}

if is_wanted editor; then
  start light 1 demo-plans/gate-hook.plan.json
  keys ctrl+Down ctrl+Down
  shot editor
  finish
fi

if is_wanted drag; then
  start light 1 demo-plans/gate-hook.plan.json
  # The mark between the shank and the eye's shoulder, as it lies in a window of this size.
  xdotool mousemove 714 205; sleep 0.5; xdotool mousedown 1
  for x in 720 728 736 744 750 754; do xdotool mousemove "$x" 207; sleep 0.15; done
  shot drag
  xdotool key Escape; xdotool mouseup 1
  finish
fi

if is_wanted add-segment; then
  start light 1 docs/handbook/shed-hook.plan.json
  keys ctrl+Return; rest
  shot add-segment
  finish
fi

if is_wanted first-plan; then
  start light 1 docs/handbook/shed-hook.plan.json
  keys ctrl+Down ctrl+Down ctrl+Down ctrl+Down ctrl+Down
  shot first-plan
  finish
fi

if is_wanted findings; then
  start light 1 docs/handbook/too-much-asked.plan.json
  keys F6
  shot findings
  finish
fi

if is_wanted editor-dark; then
  start dark 1 demo-plans/trowel.plan.json
  keys ctrl+Down ctrl+Down ctrl+Down
  shot editor-dark
  finish
fi

if is_wanted editor-large-text; then
  start high_contrast 1.5 demo-plans/boot-scraper.plan.json
  keys ctrl+Down ctrl+Down ctrl+Down ctrl+Down
  shot editor-large-text
  finish
fi

if is_wanted order; then
  start light 1 demo-plans/herb-bracket.plan.json
  keys F9 Next Next Next Next Next
  shot order
  finish
fi

# The demo job's rack, prices and figures are the smith's own.
steel_files() {
  for kind in rack merchant shop; do cp "demo-plans/jobs/three-beds.$kind.json" "$FIRSTHEAT_HOME/$kind.json"; done
}

if is_wanted steel-which; then
  start light 1 demo-plans/trellis-bracket.plan.json
  steel_files; keys F8; sleep 4
  shot steel-which
  finish
fi

if is_wanted steel-rack; then
  start light 1 demo-plans/trellis-bracket.plan.json
  steel_files; keys F8
  keys alt+2
  shot steel-rack
  finish
fi

if is_wanted steel-cut; then
  start light 1 demo-plans/trellis-bracket.plan.json
  steel_files; keys F8
  keys alt+3; sleep 2
  shot steel-cut
  finish
fi

if is_wanted steel-quote; then
  start light 1 demo-plans/trellis-bracket.plan.json
  steel_files; keys F8
  keys alt+4; sleep 2
  shot steel-quote
  finish
fi

if is_wanted anvil; then
  start dark 1 demo-plans/herb-bracket.plan.json
  keys F9 Next Next Next Next Next F11
  shot anvil
  finish
fi

# middle NAME PLAN DOWN [HEIGHT]: the strips and the piece, with the segment selected that lies so many steps down the list.
# The piece ends higher in a plan that has findings to tell.
middle() {
  is_wanted "$1" || return 0
  start light 1 "$2"
  for _ in $(seq 1 "$3"); do keys ctrl+Down; done
  sleep 0.8
  import -window root -crop "799x${4:-588}+264+84" +repage "$work/$1.png"
  keep "$work/$1.png" "$1" 640
  finish
}
middle part-curve docs/handbook/examples/curve.plan.json 1
middle part-ring docs/handbook/examples/ring.plan.json 1
middle part-flag docs/handbook/examples/flag.plan.json 0
middle part-plate docs/handbook/examples/cut-to-shape.plan.json 1 545
middle part-hole docs/handbook/examples/hole.plan.json 1
middle part-corner docs/handbook/examples/corner.plan.json 1
middle part-twist docs/handbook/examples/twist.plan.json 1
middle part-scroll docs/handbook/examples/scroll.plan.json 1 509
middle part-split demo-plans/weeding-fork.plan.json 0 545
middle part-thorn demo-plans/net-stake.plan.json 3
middle part-marks docs/handbook/examples/marks-first.plan.json 2 490
middle part-asked docs/handbook/examples/asked-sizes.plan.json 1
middle part-basket demo-plans/cloche-lifter.plan.json 5 545
middle part-weld docs/handbook/examples/weld.plan.json 1
middle part-socket docs/handbook/examples/socket.plan.json 0
middle part-collar docs/handbook/examples/collar.plan.json 0 509
middle part-plain demo-plans/gate-hook.plan.json 4
middle part-drawn docs/handbook/examples/drawn.plan.json 1 523
middle part-taper docs/handbook/examples/taper.plan.json 0
middle part-shoulder docs/handbook/examples/shoulder.plan.json 1
middle part-ball demo-plans/dibber.plan.json 5
middle part-cube demo-plans/twine-stake.plan.json 6
middle part-tenon docs/handbook/upright.plan.json 1 523
middle part-rivet docs/handbook/rivet.plan.json 0 545
middle part-hold demo-plans/weeding-fork.plan.json 16 545
middle part-joints demo-plans/pot-stand.plan.json 2 523

# sheet NAME PLAN [WHAT] [PAGE]: the first page of its mark sheet, or another page of another kind of sheet.
sheet() {
  is_wanted "$1" || return 0
  "$program" sheet "$2" -o "$work/$1.pdf" --what "${3:-marks}" >/dev/null
  pdftoppm -r 120 -png -f "${4:-1}" -l "${4:-1}" -singlefile "$work/$1.pdf" "$work/$1"
  keep "$work/$1.png" "$1" 1300
}
sheet sheet-gate-hook demo-plans/gate-hook.plan.json
sheet sheet-shed-hook docs/handbook/shed-hook.plan.json
sheet sheet-boot-scraper demo-plans/boot-scraper.plan.json
sheet sheet-gate-hook-bench demo-plans/gate-hook.plan.json bench
sheet sheet-gate-hook-templates demo-plans/gate-hook.plan.json templates
sheet sheet-herb-bracket-steps demo-plans/herb-bracket.plan.json steps 5
sheet sheet-herb-bracket-steps-short demo-plans/herb-bracket.plan.json steps-short
sheet sheet-herb-bracket-gauges demo-plans/herb-bracket.plan.json gauges
