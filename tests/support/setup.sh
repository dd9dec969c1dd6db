# SPDX-License-Identifier: MPL-2.0
# Sourced by examples/demo.sh and tests/run.sh: installs missing packages, configures and builds a preset.
# Needs Debian 12 (or a relative with the same package names); elsewhere it names what is needed and goes on.

readonly LIBPLATE_PACKAGES=(
  g++ cmake ninja-build pkg-config python3      # build tools; python3 reads results in the demo
  libeigen3-dev libspectra-dev libnlopt-cxx-dev libnlopt-dev   # core and solvers
  libsuitesparse-dev libmetis-dev libopenblas-pthread-dev
  libgmsh-dev libvtk9-dev libcairo2-dev         # meshes and pictures
  libtomlplusplus-dev libcli11-dev nlohmann-json3-dev   # design files and command line
  doctest-dev python3-jsonschema valgrind       # tests; Valgrind counts instructions
)
readonly LIBPLATE_SANITIZER_PACKAGES=(clang libclang-rt-14-dev) # sanitizers and fuzz targets: tests/run.sh, tests/fuzz/run.sh

# The dense blocks here are small: more threads of OpenBLAS gain little, and on a busy machine they wait for each other.
export OPENBLAS_NUM_THREADS=1

say()
{
  printf '== %s\n' "$*"
}

# missing_packages PACKAGE...: those that are not installed.
missing_packages()
{
  local package
  for package in "$@"; do
    [[ $(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) == installed ]] || printf '%s\n' "$package"
  done
}

# As root, or through sudo where the user is not root.
as_root()
{
  if [[ $EUID -eq 0 ]]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    say "cannot install packages: not root and no sudo; as root run: $*" >&2
    return 1
  fi
}

# install_packages [PACKAGE...]: what every build needs, and the packages named.
install_packages()
{
  local wanted=("${LIBPLATE_PACKAGES[@]}" "$@")
  if ! command -v dpkg-query >/dev/null; then
    say "not a Debian system; what is needed under other names: ${wanted[*]}"
    return
  fi
  local missing
  mapfile -t missing < <(missing_packages "${wanted[@]}")
  if [[ ${#missing[@]} -eq 0 ]]; then
    return
  fi
  say "installing Debian packages: ${missing[*]}"
  as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}"
}

# build_preset PRESET [TARGET...]: configures build/PRESET and builds it, everything or the targets named.
build_preset()
{
  local preset=$1
  shift
  say "building preset $preset in build/$preset"
  cmake --preset "$preset" --log-level=WARNING
  cmake --build --preset "$preset" --parallel "$(nproc)" ${1:+--target "$@"}
}
