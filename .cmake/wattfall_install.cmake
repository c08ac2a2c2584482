# What `cmake --install` puts under a prefix: the program, its plugins, the header for plugins with its CMake package, the licence.
# The folders are fixed and not those of the distribution's habit, because the program looks for its plugins beside itself, in
# ../lib/wattfall/plugins; a prefix can so be moved or copied as a whole.
include(CMakePackageConfigHelpers)

set(package_dir lib/cmake/wattfall)

install(TARGETS wattfall RUNTIME DESTINATION bin)
install(TARGETS ${WATTFALL_BUILT_IN_PLUGINS} LIBRARY DESTINATION lib/wattfall/plugins)
install(TARGETS wattfall_sdk EXPORT wattfallTargets FILE_SET HEADERS DESTINATION include)
install(FILES LICENSE DESTINATION share/doc/wattfall)
install(FILES ${PROJECT_BINARY_DIR}/texts/wattfall.1 DESTINATION share/man/man1)
install(FILES ${PROJECT_BINARY_DIR}/texts/wattfall DESTINATION share/bash-completion/completions)
install(FILES ${PROJECT_BINARY_DIR}/texts/_wattfall DESTINATION share/zsh/site-functions)
install(FILES ${PROJECT_BINARY_DIR}/texts/wattfall.fish DESTINATION share/fish/vendor_completions.d)

# A target in a file of its own: wattfallConfig.cmake reads it, and the function that builds plugins with it.
install(EXPORT wattfallTargets NAMESPACE wattfall:: DESTINATION ${package_dir})
# Until 1.0 a minor version may change what the package offers. Whether a built plugin fits is the interface number's business.
write_basic_package_version_file(${PROJECT_BINARY_DIR}/wattfallConfigVersion.cmake COMPATIBILITY SameMinorVersion ARCH_INDEPENDENT)
install(FILES .cmake/wattfallConfig.cmake .cmake/wattfall_add_plugin.cmake ${PROJECT_BINARY_DIR}/wattfallConfigVersion.cmake
        DESTINATION ${package_dir})
