# wattfall_add_plugin(NAME SOURCES ... [PRIVATE ...])
#
# A plugin: a shared library that sees wattfall::sdk and nothing else of the engine, put where the program looks for it. Installed
# with the package, so that plugins outside the tree are built alike; there it lands in the build folder, for `--plugins`.
function(wattfall_add_plugin name)
  cmake_parse_arguments(PLUGIN "" "" "SOURCES;PRIVATE" ${ARGN})
  add_library(${name} MODULE ${PLUGIN_SOURCES})
  target_link_libraries(${name} PRIVATE wattfall::sdk ${PLUGIN_PRIVATE})
  if(TARGET wattfall_flags)
    target_link_libraries(${name} PRIVATE wattfall_flags)
  endif()
  set_target_properties(${name} PROPERTIES PREFIX "" CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON
                        CXX_STANDARD 20 CXX_STANDARD_REQUIRED ON CXX_EXTENSIONS OFF)
  if(WATTFALL_PLUGIN_DIR)
    set_target_properties(${name} PROPERTIES LIBRARY_OUTPUT_DIRECTORY ${WATTFALL_PLUGIN_DIR})
  endif()
endfunction()
