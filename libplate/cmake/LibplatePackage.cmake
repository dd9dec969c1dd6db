# SPDX-License-Identifier: MPL-2.0
# Install rules of the CMake package: find_package(libplate COMPONENTS core solvers [meshes] [design]).
include(CMakePackageConfigHelpers)

set(libplate_package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/libplate)
foreach(component core solvers meshes design)
  if(TARGET libplate_${component})
    install(EXPORT libplate_${component}_targets NAMESPACE libplate:: DESTINATION ${libplate_package_dir}
      FILE libplate-${component}-targets.cmake COMPONENT ${component})
  endif()
endforeach()
configure_package_config_file(libplate/cmake/libplate-config.cmake.in ${PROJECT_BINARY_DIR}/libplate-config.cmake
  INSTALL_DESTINATION ${libplate_package_dir})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/libplate-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/libplate-config.cmake ${PROJECT_BINARY_DIR}/libplate-config-version.cmake
  libplate/cmake/FindCHOLMOD.cmake libplate/cmake/FindMETIS.cmake libplate/cmake/FindGmsh.cmake
  DESTINATION ${libplate_package_dir} COMPONENT core)
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT core)
