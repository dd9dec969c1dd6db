#!/usr/bin/env bash
# SPDX-License-Identifier: MPL-2.0
# Puts the faults of faults.txt into a copy of the source, one at a time, and sees whether the tests catch them.
set -euo pipefail
top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
list=$top/tests/faults/faults.txt
page=$top/tests/FAULTS.md

usage()
{
  cat <<'USAGE'
bash tests/faults/run.sh [--folder DIR] [NUMBER...]
  puts the faults with these numbers (all if there are none) one at a time into a copy of the source, builds, and runs
  the test named for each: exit status 1 if one is not caught, does not compile, or its text is gone
  --folder DIR  where to copy and build; it is kept. Without it a temporary folder is used and removed
bash tests/faults/run.sh --check   sees without building that each text occurs once, each test exists, and the page is right
bash tests/faults/run.sh --page    writes tests/FAULTS.md
USAGE
}

areas=() whats=() files=() rights=() wrongs=() tests=()
read_list()
{
  local line value
  while IFS= read -r line; do
    value=${line#*:}
    value=${value#"${value%%[! ]*}"}
    case $line in
      area:*) areas+=("$value") ;;
      what:*) whats+=("$value") ;;
      file:*) files+=("$value") ;;
      right:*) rights+=("$value") ;;
      wrong:*) wrongs+=("$value") ;;
      test:*) tests+=("$value") ;;
      '' | '#'*) ;;
      *) echo "$list: what is this line? $line" >&2; exit 1 ;;
    esac
  done < "$list"
  for count in ${#whats[@]} ${#files[@]} ${#rights[@]} ${#wrongs[@]} ${#tests[@]}; do
    if ((count != ${#areas[@]})); then
      echo "$list: ${#areas[@]} faults, but one of their keys occurs $count times" >&2
      exit 1
    fi
  done
}

# How often a text occurs in a file.
occurrences()
{
  local content without
  content=$(< "$1")
  without=${content//"$2"/}
  echo $(((${#content} - ${#without}) / ${#2}))
}

write_page()
{
  local i
  cat <<'HEAD'
# Faults made by hand

Signs, indices and factors put wrong in a formula, each with the test that fails for it. `bash tests/faults/run.sh` puts them in one at
a time, in a copy of the source, and sees that it does. The texts are in `faults/faults.txt`, from which this page is written.

| | formula | fault | file | caught by |
|---|---|---|---|---|
HEAD
  for i in "${!areas[@]}"; do
    echo "| $((i + 1)) | ${areas[i]} | ${whats[i]} | \`${files[i]}\` | \`${tests[i]}\` |"
  done
}

check()
{
  local status=0 i count stem
  for i in "${!areas[@]}"; do
    count=0
    [[ -e $top/${files[i]} ]] && count=$(occurrences "$top/${files[i]}" "${rights[i]}")
    if ((count != 1)); then
      echo "fault $((i + 1)): its text occurs $count times in ${files[i]}, not once: ${rights[i]}"
      status=1
    fi
    stem=${tests[i]#*.}
    if [[ -z $(find "$top/tests" -name "$stem.cpp") ]]; then
      echo "fault $((i + 1)): there is no test file $stem.cpp"
      status=1
    fi
  done
  if [[ $(write_page) != "$(cat "$page")" ]]; then
    echo "tests/FAULTS.md is not what the list says; write it anew: bash tests/faults/run.sh --page"
    status=1
  fi
  return $status
}

copy_source()
{
  mkdir -p "$folder"
  folder=$(cd "$folder" && pwd)
  tar -C "$top" --exclude=./build --exclude='./build-*' --exclude=./.git --exclude=./.cache --exclude=./out -c . |
    tar -C "$folder" -x
  local file
  for file in "${files[@]}"; do
    touch "$folder/$file" # built anew should an interrupted run have left its fault in an object
  done
  (cd "$folder" && cmake --preset release > configure.log 2>&1) || { tail -n 20 "$folder/configure.log"; exit 1; }
}

build()
{
  cmake --build "$folder/build/release" --target "$@" --parallel 2 > "$folder/build.log" 2>&1
}

passes()
{
  ctest --test-dir "$folder/build/release" --no-tests=error --timeout 300 -R "^${1//./\\.}\$" > "$folder/test.log" 2>&1
}

# A test that fails anyway catches nothing.
check_without_fault()
{
  local -A needed=()
  local i
  for i in "${chosen[@]}"; do
    needed[${tests[i]}]=${tests[i]%%.*}
  done
  build $(printf '%s\n' "${needed[@]}" | sort -u) || { tail -n 20 "$folder/build.log"; exit 1; }
  local test
  for test in "${!needed[@]}"; do
    if ! passes "$test"; then
      tail -n 40 "$folder/test.log"
      echo "$test fails without any fault"
      exit 1
    fi
  done
}

# Says whether a fault is caught.
try_fault()
{
  local i=$1 content outcome=caught
  local target=$folder/${files[i]}
  if (($(occurrences "$top/${files[i]}" "${rights[i]}") != 1)); then
    outcome="text not found once"
  else
    content=$(< "$top/${files[i]}")
    content=${content/"${rights[i]}"/"${wrongs[i]}"}
    printf '%s\n' "$content" > "$target"
    if ! build "${tests[i]%%.*}"; then
      outcome="does not compile"
    elif passes "${tests[i]}"; then
      outcome="NOT CAUGHT"
    fi
    cp "$top/${files[i]}" "$target"
  fi
  printf '%3d  %-20s %-40s %s: %s\n' $((i + 1)) "$outcome" "${tests[i]}" "${areas[i]}" "${whats[i]}"
  [[ $outcome == caught ]]
}

folder=
chosen=()
read_list
while (($# > 0)); do
  case $1 in
    --check) check; exit ;;
    --page) write_page > "$page"; exit ;;
    --folder) folder=${2:?a folder must follow --folder}; shift ;;
    --help) usage; exit 0 ;;
    *)
      if ! [[ $1 =~ ^[0-9]+$ ]] || (($1 < 1 || $1 > ${#areas[@]})); then
        echo "$1: a number from 1 to ${#areas[@]} is wanted" >&2
        usage >&2
        exit 2
      fi
      chosen+=($(($1 - 1))) ;;
  esac
  shift
done
((${#chosen[@]} > 0)) || chosen=("${!areas[@]}")
if [[ -z $folder ]]; then
  folder=$(mktemp -d)
  trap 'rm -rf "$folder"' EXIT
fi

copy_source
check_without_fault
missed=0
for i in "${chosen[@]}"; do
  try_fault "$i" || missed=$((missed + 1))
done
echo "$((${#chosen[@]} - missed)) of ${#chosen[@]} faults caught"
((missed == 0))
