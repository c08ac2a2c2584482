# find_package(wattfall) comes here: the target wattfall::sdk, the function wattfall_add_plugin, and wattfall_PROGRAM, the path
# of the program that was installed with them.
include(${CMAKE_CURRENT_LIST_DIR}/wattfallTargets.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/wattfall_add_plugin.cmake)
get_filename_component(wattfall_PROGRAM ${CMAKE_CURRENT_LIST_DIR}/../../../bin/wattfall ABSOLUTE)
