#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# Fails if a source is cited that tests/BIBLIOGRAPHY.md does not list, or a comment names a test file that is not there.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

folders=(libplate solvers meshes bindings tests examples benchmarks)
status=0

while read -r key; do
  if ! grep -qF -- "**$key**" tests/BIBLIOGRAPHY.md; then
    echo "not in tests/BIBLIOGRAPHY.md: $key, cited in $(grep -rlF -- "$key" "${folders[@]}" | head -n 3 | tr '\n' ' ')"
    status=1
  fi
done < <(grep -rhoE '\[[A-Z][A-Za-z-]*[0-9]{4}[a-z]?\]' --include='*.h' --include='*.cpp' --include='*.csv' "${folders[@]}" | sort -u)

while read -r file; do
  if [[ ! -e $file ]]; then
    echo "no such file: $file, named in $(grep -rlF --include='*.h' --include='*.cpp' -- "$file" "${folders[@]}" | head -n 3 | tr '\n' ' ')"
    status=1
  fi
done < <(grep -rhoE '\btests/[A-Za-z0-9_/]+\.(cpp|csv|md)\b' --include='*.h' --include='*.cpp' "${folders[@]}" | sort -u)

exit $status
