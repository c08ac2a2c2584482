# cmake -DINPUTS=a.css,b.js -DOUTPUT=assets.cpp -P embed.cmake: each file as a string named after it (a.css is a_css). Written as bytes,
# so that no character needs care.
string(REPLACE "," ";" inputs "${INPUTS}")
set(text "// Made by embed.cmake.\n#include \"assets.hpp\"\n\nnamespace pictures::assets {\n")
foreach(input IN LISTS inputs)
  get_filename_component(name ${input} NAME)
  string(MAKE_C_IDENTIFIER ${name} name)
  file(READ ${input} content HEX)
  string(LENGTH "${content}" digits)
  math(EXPR bytes "${digits} / 2")
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," content "${content}")
  string(APPEND text "\nstatic constexpr char ${name}_bytes[] = {${content}'\\0'};\n"
                     "const std::string_view ${name}{${name}_bytes, ${bytes}};\n")
endforeach()
string(APPEND text "\n}  // namespace pictures::assets\n")
file(WRITE ${OUTPUT} "${text}")
