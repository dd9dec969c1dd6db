# SPDX-License-Identifier: MPL-2.0
# libplate_test(NAME SOURCES file... [LIBRARIES target...] [LABELS label...] [LONG_SOURCES file...] [ENVIRONMENT A=B...])
#
# Builds one doctest executable and registers each source file that has test cases as a test of its own,
# NAME.file_stem. main() comes from support/doctest_main.cpp.
# LABELS: "slow" keeps the tests out of the sanitizer run and its build, "long" out of every run but tests/run.sh --all;
# LONG_SOURCES is compiled into the same executable and labelled "long".
find_package(doctest 2.4 REQUIRED)

# LeakSanitizer must not report what the libraries we link keep until exit.
set(LIBPLATE_TEST_ENVIRONMENT "OPENBLAS_NUM_THREADS=1" "LSAN_OPTIONS=suppressions=${CMAKE_CURRENT_LIST_DIR}/leaks.supp:print_suppressions=0")

function(libplate_test name)
  cmake_parse_arguments(arg "" "" "SOURCES;LONG_SOURCES;LIBRARIES;LABELS;ENVIRONMENT" ${ARGN})
  if(arg_UNPARSED_ARGUMENTS)
    message(FATAL_ERROR "libplate_test(${name}): unknown arguments ${arg_UNPARSED_ARGUMENTS}")
  endif()
  add_executable(${name} ${arg_SOURCES} ${arg_LONG_SOURCES})
  target_link_libraries(${name} PRIVATE ${arg_LIBRARIES} libplate_test_main)
  target_compile_features(${name} PRIVATE cxx_std_20)
  set_target_properties(${name} PROPERTIES CXX_EXTENSIONS OFF)
  libplate_developer_flags(${name})
  if(LIBPLATE_SANITIZE AND "slow" IN_LIST arg_LABELS)
    set_target_properties(${name} PROPERTIES EXCLUDE_FROM_ALL ON) # the sanitizer run leaves them out: built by name
  endif()

  foreach(source IN LISTS arg_SOURCES arg_LONG_SOURCES)
    cmake_path(ABSOLUTE_PATH source OUTPUT_VARIABLE path)
    file(STRINGS ${path} cases REGEX "^ *TEST_CASE")
    if(NOT cases)
      continue()
    endif()
    cmake_path(GET source STEM stem)
    cmake_path(GET source FILENAME filename)
    add_test(NAME ${name}.${stem} COMMAND ${name} --source-file=*/${filename} --no-intro=true)
    set(labels ${arg_LABELS})
    if(source IN_LIST arg_LONG_SOURCES)
      list(APPEND labels long)
    endif()
    # doctest is content with a filter that matches nothing; we are not.
    set_tests_properties(${name}.${stem} PROPERTIES LABELS "${labels}" FAIL_REGULAR_EXPRESSION "test cases: +0 "
      ENVIRONMENT "${LIBPLATE_TEST_ENVIRONMENT};${arg_ENVIRONMENT}")
  endforeach()
endfunction()
