# SPDX-License-Identifier: MIT
# Headers, the CMake package and the pkg-config file. Nothing here depends on the architecture.
include(CMakePackageConfigHelpers)
include(GNUInstallDirs)

set(baywork_package_dir ${CMAKE_INSTALL_DATADIR}/cmake/baywork)

install(DIRECTORY "${PROJECT_SOURCE_DIR}/include/baywork" DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
  FILES_MATCHING PATTERN "*.hpp")
install(TARGETS baywork EXPORT baywork_targets INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
install(EXPORT baywork_targets NAMESPACE baywork:: FILE baywork-targets.cmake DESTINATION ${baywork_package_dir})

configure_package_config_file("${CMAKE_CURRENT_LIST_DIR}/baywork-config.cmake.in" "${PROJECT_BINARY_DIR}/baywork-config.cmake"
  INSTALL_DESTINATION ${baywork_package_dir} NO_SET_AND_CHECK_MACRO NO_CHECK_REQUIRED_COMPONENTS_MACRO)
write_basic_package_version_file("${PROJECT_BINARY_DIR}/baywork-config-version.cmake"
  COMPATIBILITY SameMinorVersion ARCH_INDEPENDENT)
install(FILES "${PROJECT_BINARY_DIR}/baywork-config.cmake" "${PROJECT_BINARY_DIR}/baywork-config-version.cmake"
  DESTINATION ${baywork_package_dir})

# The prefix is found from where the .pc file lies, so that an installed tree can be moved.
set(baywork_pc_dir ${CMAKE_INSTALL_DATADIR}/pkgconfig)
file(RELATIVE_PATH baywork_pc_to_prefix "/${baywork_pc_dir}" "/")
string(REGEX REPLACE "/$" "" baywork_pc_to_prefix "${baywork_pc_to_prefix}")
configure_file("${CMAKE_CURRENT_LIST_DIR}/baywork.pc.in" "${PROJECT_BINARY_DIR}/baywork.pc" @ONLY)
install(FILES "${PROJECT_BINARY_DIR}/baywork.pc" DESTINATION ${baywork_pc_dir})
