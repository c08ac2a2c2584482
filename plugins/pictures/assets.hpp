// The style sheets and scripts of this folder, put into the plugin at build time by embed.cmake.
#pragma once

#include <string_view>

namespace pictures::assets {

extern const std::string_view drawing_css, page_css, page_js;

}  // namespace pictures::assets
