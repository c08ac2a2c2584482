#include "html.hpp"

#include <cmath>

#include "markup.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

void replace_all(std::string& text, const std::string& what, const std::string& by) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
    text.replace(at, what.size(), by);
}

std::string number_element(const Ref& ref, const std::string& spelled) {
  return "<data value=\"" + exact(ref.number()) + "\" data-at=\"" + escape(ref.pointer()) + "\">" + pretty(spelled) +
         "</data>";
}

/// A heading as an attribute: without its mark and its tags.
std::string label_of(const Heading& heading) {
  std::string text;
  bool inside = false;
  for (const char c : heading.html.substr(heading.html.starts_with('>') ? 1 : 0)) {
    if (c == '<') inside = true;
    if (!inside) text += c;
    if (c == '>') inside = false;
  }
  return text;
}

}  // namespace

std::string pretty(const std::string& spelled) {
  std::string text = escape(spelled);
  for (const char* prefix : {" ", " k", " M"})
    replace_all(text, std::string(prefix) + "ohm", std::string(prefix) + "\u03a9");
  for (const char* unit : {"F", "H", "W", "V", "A"})
    replace_all(text, std::string(" u") + unit, std::string(" \u00b5") + unit);
  replace_all(text, " - j", " \u2212 j");
  if (text.starts_with('-')) text.replace(0, 1, "\u2212");
  return text;
}

std::string shown(const Ref& ref, const std::string& unit, int digits) {
  const double value = ref.number();
  if (unit == "W" && value != 0.0 && std::abs(value) < 1e-15) return number_element(ref, "<1 fW");
  const bool plain = unit == "count" || unit == "%";
  if (std::isfinite(value))
    return number_element(ref, plain ? reports::significant(value, digits) : reports::spell(value, unit, digits));
  return unit.empty() ? "<span class=\"none\">infinite</span>" : "<span class=\"none\">\u2013</span>";
}

std::string shown_complex(const Ref& ref) {
  const double re = ref[std::size_t{0}].number(), im = ref[1].number();
  if (!std::isfinite(re) || !std::isfinite(im)) return "<span class=\"none\">\u2013</span>";
  const std::string both = reports::spell_complex(re, im);
  const std::size_t join = both.find(" + j") != std::string::npos ? both.find(" + j") : both.find(" - j");
  return number_element(ref[std::size_t{0}], both.substr(0, join)) + (im < 0.0 ? " \u2212 j" : " + j") +
         "<data value=\"" + exact(im) + "\" data-at=\"" + escape(ref[1].pointer()) + "\">" +
         pretty(both.substr(join + 4)) + "</data> \u03a9";
}

std::string table(const std::string& caption, const std::string& also, const std::vector<Heading>& headings,
                  const std::vector<std::vector<Cell>>& rows, Narrow narrow) {
  // Browsers forget what a table is where its rows are no longer laid out as one: the roles say it again.
  const bool stacks = narrow == Narrow::stacks;
  const auto role = [&](const char* name) { return stacks ? std::string(" role=\"") + name + '"' : std::string(); };
  std::string out =
      "<div class=\"scroll" + std::string(stacks ? " stack" : "") +
      "\" tabindex=\"0\" role=\"group\" aria-label=\"Table: " + escape(caption + (also.empty() ? "" : ", " + also)) +
      "\"><table" + role("table") + "><caption>" + escape(caption) +
      (also.empty() ? "" : "<span class=\"sr\">, " + escape(also) + "</span>") + "</caption><thead" + role("rowgroup") +
      "><tr" + role("row") + ">";
  const auto whose = [](int variant) {
    return variant < 0 ? std::string() : variant_mark(static_cast<std::size_t>(variant));
  };
  for (const Heading& heading : headings) {
    const bool figure = heading.html.starts_with('>');
    out += "<th scope=\"col\"" + role("columnheader") + (figure ? " class=\"num\"" : "") + whose(heading.variant) +
           '>' + heading.html.substr(figure ? 1 : 0) + "</th>";
  }
  out += "</tr></thead><tbody" + role("rowgroup") + ">\n";
  for (const std::vector<Cell>& row : rows) {
    out += "<tr" + role("row") + ">";
    for (std::size_t c = 0; c < row.size(); ++c) {
      const Cell& cell = row[c];
      out += cell.head ? "<th scope=\"row\"" + role("rowheader") : "<td" + role("cell");
      if (stacks && !cell.head && c < headings.size()) out += " data-label=\"" + label_of(headings[c]) + '"';
      if (cell.figure || cell.words) out += cell.figure ? " class=\"num\"" : " class=\"words\"";
      const bool apart = stacks && !cell.head && !cell.html.empty();
      out += whose(cell.variant) + '>' + (apart ? "<span>" : "") + cell.html + (apart ? "</span>" : "") +
             (cell.head ? "</th>" : "</td>");
    }
    out += "</tr>\n";
  }
  return out + "</tbody></table></div>\n";
}

std::string details(const std::string& summary, const std::string& inside) {
  return "<details><summary>" + escape(summary) + "</summary>" + inside + "</details>\n";
}

std::string badge(bool good, const std::string& word) {
  return std::string("<span class=\"badge ") + (good ? "good" : "bad") + "\"><span aria-hidden=\"true\">" +
         (good ? "\u2713" : "\u2715") + "</span> " + escape(word) + "</span>";
}

std::string variant_name(const Ref& variant) {
  return variant["name"].text();
}

std::string variant_mark(std::size_t index) {
  return " data-variant=\"" + std::to_string(index) + '"';
}

std::string swatch(std::size_t style) {
  const std::string kind = std::to_string(style % 4);
  return "<svg class=\"swatch\" viewBox=\"0 0 34 12\" width=\"34\" height=\"12\" aria-hidden=\"true\"><path "
         "class=\"line v" +
         kind + "\" d=\"M1 6H33\"/><use href=\"#m" + kind + "\" class=\"mark v" + kind + "\" x=\"17\" y=\"6\"/></svg>";
}

std::string variant_heading(const Ref& root, std::size_t index) {
  if (root["variants"].size() < 2) return "";
  return "<h3>" + swatch(index) + "<span>" + escape(variant_name(root["variants"][index])) + "</span></h3>";
}

std::string section(const std::string& id, const std::string& title, const std::string& lead,
                    const std::string& inside) {
  if (inside.empty()) return "";
  return "<section id=\"" + id + "\" aria-labelledby=\"" + id + "-title\"><h2 id=\"" + id + "-title\">" +
         escape(title) + "</h2>\n" + (lead.empty() ? "" : "<p class=\"lead\">" + escape(lead) + "</p>\n") + inside +
         "</section>\n";
}

}  // namespace pictures
