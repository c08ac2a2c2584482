// Pieces of a page: numbers that stay readable by programs, tables, headings.
#pragma once

#include <string>
#include <vector>

#include "ref.hpp"

namespace pictures {

/// Spelled for reading: Greek letters for ohm and micro, a true minus. Escaped.
std::string pretty(const std::string& spelled);

/// `<data value="..." data-at="/variants/0/...">71.3 W</data>`: value is exact. A dash where there is no number; for a
/// ratio (unit "") "infinite".
std::string shown(const Ref& ref, const std::string& unit, int digits = 3);

/// "31.2 − j48.8 Ω", its parts as two such numbers.
std::string shown_complex(const Ref& ref);

struct Cell {
  std::string html;
  bool head = false;    ///< names its row
  bool figure = false;  ///< aligned to the right
  int variant = -1;     ///< whose it is, where variants stand side by side; it goes where that variant is taken off
  bool words = false;   ///< whole sentences
};

/// HTML; of figures it begins with '>'.
struct Heading {
  std::string html;
  int variant = -1;
  Heading(const char* text) : html(text) {}
  Heading(std::string text, int whose = -1) : html(std::move(text)), variant(whose) {}
};

/// Where there is no room beside each other: scroll sideways within the table's own frame, or stand a row's cells below
/// each other, each with its heading.
enum class Narrow { scrolls, stacks };

/// `also` follows the caption for who hears it alone: the variant, whose name stands above. Caption and `also` are
/// escaped, cells and headings are HTML.
std::string table(const std::string& caption, const std::string& also, const std::vector<Heading>& headings,
                  const std::vector<std::vector<Cell>>& rows, Narrow narrow = Narrow::scrolls);

/// Folded away until it is asked for.
std::string details(const std::string& summary, const std::string& inside);

/// A figure with its tick or cross and a word, never a colour alone.
std::string badge(bool good, const std::string& word);

/// What a variant is called on the page; empty where there is one without a name.
std::string variant_name(const Ref& variant);

/// ` data-variant="0"`.
std::string variant_mark(std::size_t index);

/// `<h3>` with the variant's swatch and name where there are several.
std::string variant_heading(const Ref& root, std::size_t index);

/// How a variant is told from others: colour class, dash and marker. For legends.
std::string swatch(std::size_t style);

std::string section(const std::string& id, const std::string& title, const std::string& lead,
                    const std::string& inside);

}  // namespace pictures
