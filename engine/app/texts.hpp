// The manual page and the shells' completions, made of the definitions that the command line is read with, so that they cannot fall behind. Private to
// the program.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace wattfall::app {

/// What can be printed: "man", "bash", "zsh", "fish".
const std::vector<std::string>& texts();

/// One of them, for the program that `app` describes. Ends in a newline.
std::string make_text(const std::string& what, const CLI::App& app);

}  // namespace wattfall::app
