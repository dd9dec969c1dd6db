# SPDX-License-Identifier: MPL-2.0
# Driver of the consumer tests, see CMakeLists.txt.

# run(command...): stops the test if the command fails.
function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status)
  if(NOT status EQUAL 0)
    list(JOIN ARGN " " command)
    message(FATAL_ERROR "exit status ${status}: ${command}")
  endif()
endfunction()

set(common -G Ninja -D CMAKE_BUILD_TYPE=Release -D CMAKE_CXX_COMPILER=${compiler} -D CMAKE_CXX_COMPILER_LAUNCHER=${launcher})
set(prefix ${work_dir}/prefix)
file(REMOVE_RECURSE ${work_dir})

if(variant STREQUAL "permissive")
  # Disabled packages make any call for them an error, so the build cannot lean on them unseen.
  run(${CMAKE_COMMAND} -S ${source_dir} -B ${work_dir}/libplate ${common}
    -D LIBPLATE_WITH_MESHES=OFF -D LIBPLATE_WITH_CHOLMOD=OFF -D LIBPLATE_WITH_TESTS=OFF -D CMAKE_UNITY_BUILD=ON
    -D CMAKE_DISABLE_FIND_PACKAGE_Gmsh=ON -D CMAKE_DISABLE_FIND_PACKAGE_VTK=ON
    -D CMAKE_DISABLE_FIND_PACKAGE_CHOLMOD=ON -D CMAKE_DISABLE_FIND_PACKAGE_METIS=ON)
  set(build_dir ${work_dir}/libplate)
  run(${CMAKE_COMMAND} --build ${build_dir} --target libplate_core libplate_solvers)
endif()

set(components core solvers)
set(project solver_project)
set(program free_strip)
if(variant STREQUAL "design")
  list(APPEND components meshes design)
  set(project design_project)
  set(program design_mass)
endif()
foreach(component IN LISTS components)
  run(${CMAKE_COMMAND} --install ${build_dir} --component ${component} --prefix ${prefix})
endforeach()
run(${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/${project} -B ${work_dir}/project ${common}
  -D CMAKE_PREFIX_PATH=${prefix} -D CMAKE_FIND_USE_PACKAGE_REGISTRY=OFF)
run(${CMAKE_COMMAND} --build ${work_dir}/project)
run(${work_dir}/project/${program})

# What a program needs at run time is what someone who ships it is bound by.
set(unwanted)
if(project STREQUAL "solver_project")
  set(unwanted gmsh vtk)
endif()
if(variant STREQUAL "permissive")
  list(APPEND unwanted cholmod metis)
endif()
execute_process(COMMAND ldd ${work_dir}/project/${program} OUTPUT_VARIABLE needed COMMAND_ERROR_IS_FATAL ANY)
foreach(library IN LISTS unwanted)
  if(needed MATCHES "lib${library}")
    message(FATAL_ERROR "the program needs ${library}:\n${needed}")
  endif()
endforeach()
