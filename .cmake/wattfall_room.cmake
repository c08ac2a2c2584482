# wattfall_room(NAME SOURCES ... [USES ...] [PRIVATE ...])
#
# A room of the house: a static library wattfall::NAME with an include root of its own (NAME's folder /include), so that a
# header of a room that is not named in USES or PRIVATE does not compile. USES are rooms whose headers stand in this room's
# own headers; PRIVATE those that only its sources include. The global property WATTFALL_ROOMS lists the names, for the test
# that goes through all of them.
#
# -Wno-missing-field-initializers: designated initializers leave members to their defaults on purpose. -Wno-restrict: g++ 12 sees
# overlaps in `"text" + string` that are not there (its bug 105651). -Wno-maybe-uninitialized: g++ says itself that sanitizers
# make it warn of what is initialized; the other builds keep the warning.
add_library(wattfall_flags INTERFACE)
target_compile_options(wattfall_flags INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion
                                                -Wno-missing-field-initializers $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>
                                                $<$<BOOL:${WATTFALL_WERROR}>:-Werror>)
if(WATTFALL_SANITIZE)
  target_compile_options(wattfall_flags INTERFACE -fsanitize=${WATTFALL_SANITIZE} -fno-sanitize-recover=all
                                                  -fno-omit-frame-pointer $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>)
  target_link_options(wattfall_flags INTERFACE -fsanitize=${WATTFALL_SANITIZE})
  # What these three find, a bad address at each use of a member, address sees as well, and they take a quarter of the time
  # to compile; the fuzzers, built by clang, keep them.
  target_compile_options(wattfall_flags INTERFACE $<$<CXX_COMPILER_ID:GNU>:-fno-sanitize=null,alignment,object-size>)
endif()

function(wattfall_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;USES;PRIVATE" ${ARGN})
  add_library(wattfall_${name} STATIC ${ROOM_SOURCES})
  add_library(wattfall::${name} ALIAS wattfall_${name})
  target_include_directories(wattfall_${name} PUBLIC $<BUILD_INTERFACE:${CMAKE_CURRENT_SOURCE_DIR}/include>)
  target_link_libraries(wattfall_${name} PUBLIC ${ROOM_USES} PRIVATE wattfall_flags ${ROOM_PRIVATE})
  set_property(GLOBAL APPEND PROPERTY WATTFALL_ROOMS ${name})
endfunction()
