#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# Installs what is missing, builds the benchmarks with what they compare with, runs them, prints one table of ratios.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source tests/support/setup.sh

readonly BENCHMARK_PACKAGES=(
  libbenchmark-dev valgrind                     # seconds, instructions
  libarpack2-dev slepc-dev libgetfem-dev        # what libplate is compared with
)

usage()
{
  cat <<'USAGE'
bash benchmarks/run.sh [--quick | --full | --accept]
  (nothing)  all benchmarks, five times, up to 150 000 unknowns
  --quick    once, without the larger viola
  --full     growth up to a million unknowns as well: minutes, and up to 12 GiB of memory
  --accept   counts the instructions of the kernels and accepts them (benchmarks/instructions), nothing else
USAGE
}

options=()
case ${1:-} in
  '') ;;
  --quick) options=(--repetitions 1 --filter=-130k --most-unknowns 4e4) ;;
  --full) options=(--most-unknowns 2e6) ;;
  --accept) ;;
  --help) usage; exit 0 ;;
  *) usage >&2; exit 2 ;;
esac

install_packages "${BENCHMARK_PACKAGES[@]}"
cmake --preset release -D LIBPLATE_WITH_BENCHMARKS=ON --log-level=WARNING
if [[ ${1:-} == --accept ]]; then
  build_preset release accept_instructions
  exit
fi
build_preset release plate benchmark_programs
python3 -B benchmarks/tools/measure.py build/release "${options[@]}"
