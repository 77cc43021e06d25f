#!/usr/bin/env bash
# How many actions three pieces take from an empty program: clicks and key chords; letters and figures that are typed are not
# counted. Done in the real window; a picture of each is kept to be looked at.
# Needs a built program, and Debian's xvfb, xdotool and imagemagick.
#   docs/actions.sh [FOLDER]      the pictures go there, or into target
set -euo pipefail
cd "$(dirname "$0")/.."

# Whichever was built last.
program=target/release/firstheat
[ target/debug/firstheat -nt "$program" ] && program=target/debug/firstheat
out=${1:-target}
work=$(mktemp -d)
export FIRSTHEAT_HOME="$work/home" LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY
screen="" app=""
clean_up() { for id in $app $screen; do kill "$id" 2>/dev/null || true; done; rm -rf "$work"; }
trap clean_up EXIT
Xvfb -displayfd 3 -screen 0 1366x768x24 -nolisten tcp 3>"$work/display" 2>/dev/null &
screen=$!
until [ -s "$work/display" ]; do sleep 0.1; done
export DISPLAY=":$(cat "$work/display")"

count=0
keys() { for key in "$@"; do xdotool key --clearmodifiers "$key"; count=$((count + 1)); sleep 0.45; done; }
types() { xdotool type --delay 12 "$1"; sleep 0.35; }
# A new plan: its title and its bar.
begin() {
  rm -rf "$FIRSTHEAT_HOME" && mkdir -p "$FIRSTHEAT_HOME"
  printf '{ "tour_seen": true }\n' >"$FIRSTHEAT_HOME/settings.json"
  "$program" 2>"$work/log" &
  app=$!
  xdotool search --sync --onlyvisible --pid "$app" --name "First Heat" windowmove %1 0 0 windowsize %1 1366 768 windowfocus %1 >/dev/null
  sleep 3
  count=0
  keys ctrl+n; types "$1"; keys Tab Tab Tab; types "$2"; keys Return
}
# A part by its letters; its first size is typed next.
add() { keys ctrl+Return; types "$1"; keys Return; sleep 0.4; types "$2"; }
finish() { # NAME
  keys Return
  echo "$1: $count actions"
  sleep 1
  import -window root "$out/actions-$1.png"
  kill "$app"; wait "$app" 2>/dev/null || true; app=""
}

begin "Apron hook" "1/2 square"
add curl "4"
add plain "3"
add twist "2"; keys Tab Tab; types "1"
add screw "1/4"
finish apron-hook

begin "Bean stake" "3/8 square"
add taper "3"
add plain "2 ft"
add twist "4"; keys Tab Tab; types "1 1/2"
add plain "10 - 2 1/2"
add eye "3/4"
finish bean-stake

begin "Carrot fork" "1/2 square"
add tang "3 1/2"
add shoulder "1/8"
add drawn "5"; keys Tab; types "3/8 square"
add shoulder "1/8"
add plain "1 1/2"
add tines ""
# The points of both tines: the split, its first branch, two bends, the point; then the second branch.
keys ctrl+Down ctrl+Down ctrl+Down ctrl+Down F2; types "4"
keys ctrl+Down ctrl+Down ctrl+Down ctrl+Down F2; types "4"
finish carrot-fork
