#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# Installs what is missing, builds, and runs the main job on an invented viola: the modes of a spruce top and of a
# laminated one, what the laminate's thickness does to its modes, and a search for laminates that behave like the spruce.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source tests/support/setup.sh

out=out/demo
plate=build/release/plate

install_packages
build_preset release plate

# run COMMAND FOLDER ...: shows the command as a user would type it, and runs it; results go to $out/FOLDER.
run()
{
  local command=$1 folder=$2
  shift 2
  printf '\n$ %s\n' "$plate $command $* --out $out/$folder"
  "$plate" "$command" "$@" --out "$out/$folder"
}

rm -rf "$out"
run modes spruce examples/viola/spruce_top.toml
run modes laminate examples/viola/laminate_top.toml
run sweep sweep examples/viola/laminate_top.toml --key layup.scale --from 0.7 --to 1.3 --steps 7
run match match examples/viola/match.toml --threads "$(nproc)"

printf '\n'
say "what the numbers say"
python3 examples/read_demo.py "$out/spruce/modes.json" "$out/laminate/modes.json" "$out/sweep/sweep.json"
say "pictures: all modes on one sheet, frequency against thickness, the laminates found and the best of them beside the spruce"
ls "$out/spruce/modes.png" "$out/laminate/modes.png" "$out/sweep/sweep.png" "$out"/match/*.png
say "beside them: each mode, thickness and arching as PNG and SVG, tables as CSV and JSON, plate.vtu for VTK viewers"
