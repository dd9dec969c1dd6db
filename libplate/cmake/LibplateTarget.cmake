# SPDX-License-Identifier: MPL-2.0
# One way to declare a library of the project: language level, warnings, sanitizers, alias, header set, install.

set(LIBPLATE_WARNINGS -Wall -Wextra -Wconversion -Wshadow -Wpedantic -Wnon-virtual-dtor -Wold-style-cast)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # -Wall's -Wrestrict of GCC 12 takes every std::string sum at -O3 for an overlap (GCC bug 105651).
  list(APPEND LIBPLATE_WARNINGS -Wno-restrict)
endif()
if(CMAKE_UNITY_BUILD)
  list(APPEND LIBPLATE_WARNINGS -Wno-shadow) # joined sources see each other's file-local names
endif()
option(LIBPLATE_WARNINGS_AS_ERRORS "Treat warnings in our own code as errors" ${PROJECT_IS_TOP_LEVEL})
set(LIBPLATE_SANITIZE "" CACHE STRING "Sanitizers for our own code, e.g. address,undefined")

# Warnings, sanitizers and hidden symbols on one target; nothing global is touched.
#
# Hidden: Gmsh's library holds Eigen code of its own. An executable that shows the same templates to the loader would
# have Gmsh call ours, which may be built with other settings (memory alignment under the sanitizers, for one).
function(libplate_developer_flags target)
  set_target_properties(${target} PROPERTIES CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON)
  if(PROJECT_IS_TOP_LEVEL)
    target_compile_options(${target} PRIVATE ${LIBPLATE_WARNINGS})
    if(LIBPLATE_WARNINGS_AS_ERRORS)
      target_compile_options(${target} PRIVATE -Werror)
    endif()
  endif()
  if(LIBPLATE_SANITIZE)
    target_compile_options(${target} PRIVATE -fsanitize=${LIBPLATE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
    target_link_options(${target} PRIVATE -fsanitize=${LIBPLATE_SANITIZE})
  endif()
endfunction()

# libplate_library(NAME core HEADERS ... SOURCES ...): target libplate_core with alias libplate::core.
function(libplate_library)
  cmake_parse_arguments(arg "" "NAME" "HEADERS;SOURCES" ${ARGN})
  set(target libplate_${arg_NAME})
  add_library(${target} STATIC ${arg_SOURCES})
  add_library(libplate::${arg_NAME} ALIAS ${target})
  target_sources(${target} PUBLIC FILE_SET HEADERS BASE_DIRS include FILES ${arg_HEADERS})
  target_compile_features(${target} PUBLIC cxx_std_20)
  set_target_properties(${target} PROPERTIES
    OUTPUT_NAME plate_${arg_NAME} CXX_EXTENSIONS OFF POSITION_INDEPENDENT_CODE ON EXPORT_NAME ${arg_NAME}
    VERIFY_INTERFACE_HEADER_SETS ${PROJECT_IS_TOP_LEVEL})
  target_include_directories(${target} PRIVATE src)
  libplate_developer_flags(${target})
  install(TARGETS ${target} EXPORT libplate_${arg_NAME}_targets
    ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT ${arg_NAME}
    FILE_SET HEADERS DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT ${arg_NAME})
endfunction()
