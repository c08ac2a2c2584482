#include "renders.hpp"

#include <cmark-gfm-core-extensions.h>
#include <cmark-gfm.h>

#include <cstdlib>
#include <memory>

namespace formats {

std::string html_of(const std::string& markdown) {
  cmark_gfm_core_extensions_ensure_registered();
  const std::unique_ptr<cmark_parser, decltype(&cmark_parser_free)> parser(cmark_parser_new(CMARK_OPT_UNSAFE), cmark_parser_free);
  cmark_parser_attach_syntax_extension(parser.get(), cmark_find_syntax_extension("table"));
  cmark_parser_feed(parser.get(), markdown.data(), markdown.size());
  const std::unique_ptr<cmark_node, decltype(&cmark_node_free)> root(cmark_parser_finish(parser.get()), cmark_node_free);
  const std::unique_ptr<char, decltype(&std::free)> html(
      cmark_render_html(root.get(), CMARK_OPT_UNSAFE, cmark_parser_get_syntax_extensions(parser.get())), &std::free);
  return html.get();
}

std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t count = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + piece.size())) ++count;
  return count;
}

std::vector<std::vector<std::size_t>> table_shapes(const std::string& html) {
  std::vector<std::vector<std::size_t>> tables;
  for (std::size_t at = html.find("<table>"); at != std::string::npos; at = html.find("<table>", at + 1)) {
    const std::string table = html.substr(at, html.find("</table>", at) - at);
    std::vector<std::size_t> rows;
    for (std::size_t row = table.find("<tr>"); row != std::string::npos; row = table.find("<tr>", row + 1)) {
      const std::string cells = table.substr(row, table.find("</tr>", row) - row);
      rows.push_back(count_of(cells, "</td>") + count_of(cells, "</th>"));
    }
    tables.push_back(rows);
  }
  return tables;
}

}  // namespace formats
