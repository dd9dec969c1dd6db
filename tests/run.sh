#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# Installs what is missing, builds and runs the tests: optimised, then the quicker ones under the sanitizers.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source tests/support/setup.sh

usage()
{
  cat <<'USAGE'
bash tests/run.sh [--all | --quick]
  (nothing)  all tests but the long studies, then the tests not labelled "slow" with address and undefined-behaviour sanitizers
             and some thousand inputs on each fuzz target
  --all      the long studies (label "long") as well
  --quick    no sanitizers
USAGE
}

skip='^long$'
sanitizers=yes
for option in "$@"; do
  case $option in
    --all) skip='^$' ;;
    --quick) sanitizers=no ;;
    --help) usage; exit 0 ;;
    *) usage >&2; exit 2 ;;
  esac
done

if [[ $sanitizers == yes ]]; then
  install_packages "${LIBPLATE_SANITIZER_PACKAGES[@]}"
else
  install_packages
fi
build_preset release
say "tests of build/release"
ctest --preset release --parallel "$(nproc)" --label-exclude "$skip"

if [[ $sanitizers == yes ]]; then
  build_preset asan
  say "tests of build/asan, with address and undefined-behaviour sanitizers"
  ctest --preset asan --parallel "$(nproc)" --label-exclude '^(long|slow)$'
  bash tests/fuzz/run.sh 6000 build/asan
fi
