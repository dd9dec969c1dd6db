#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# bash tests/fuzz/run.sh [RUNS [BUILD_FOLDER]]: tries RUNS inputs (20 000) on each fuzz target, starting from the seeds and the
# examples. Builds the preset fuzz unless the folder of a build with LIBPLATE_WITH_FUZZERS is given. An input that crashes,
# takes more than 10 s or more than 2 GB is kept in the folder named at the end; put it into tests/regression.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
source tests/support/setup.sh

runs=${1:-20000}
if [[ -n ${2:-} ]]; then
  build=$2
else
  install_packages "${LIBPLATE_SANITIZER_PACKAGES[@]}"
  build_preset fuzz fuzzers
  build=build/fuzz
fi
findings=$(mktemp -d "${TMPDIR:-/tmp}/plate-fuzz-XXXXXX")

# fuzz TARGET [SEED_FOLDER...]: the same seed every time, so that a run can be repeated.
fuzz()
{
  local target=$1
  shift
  local corpus=$findings/$target-corpus
  mkdir -p "$corpus"
  say "fuzzing $target with $runs inputs"
  LSAN_OPTIONS=suppressions=tests/support/leaks.supp:print_suppressions=0 \
    "$build/tests/fuzz/${target}_fuzzer" -runs="$runs" -seed=1 -timeout=10 -rss_limit_mb=2048 -max_len=4096 \
    -dict="$build/tests/fuzz/design.dict" -artifact_prefix="$findings/$target-" -verbosity=0 -print_final_stats=1 \
    "$corpus" "$@" 2>&1 | grep -Ev 'stat::(new_units|slowest)' || { say "finding in $findings"; exit 1; }
}

fuzz design tests/fuzz/seeds/design examples/viola
fuzz override tests/fuzz/seeds/override
fuzz laminate_code tests/fuzz/seeds/laminate_code
fuzz point_file tests/fuzz/seeds/point_file
fuzz measured_modes tests/fuzz/seeds/measured_modes
fuzz body examples/viola/body
fuzz match_problem tests/fuzz/seeds/match_problem
rm -r "$findings"
