// Markdown as it renders.
#pragma once

#include <string>
#include <vector>

namespace formats {

/// HTML, made with the table extension; raw HTML in the Markdown comes through as it would on a page that lets it.
std::string html_of(const std::string& markdown);

/// Cells of each table row of the Markdown, table by table.
std::vector<std::vector<std::size_t>> table_shapes(const std::string& html);

std::size_t count_of(const std::string& text, const std::string& piece);

}  // namespace formats
