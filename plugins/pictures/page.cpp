// The writer `page`: one HTML file that opens from disk and asks for nothing.
#include <stdexcept>

#include "assets.hpp"
#include "markup.hpp"
#include "page_sections.hpp"
#include "trade.hpp"
#include "writers.hpp"

namespace pictures {
namespace {

struct Chapter {
  const char* id;
  const char* short_name;
  std::string (*make)(const Ref& document);
};

constexpr Chapter chapters[] = {
    {"verdict", "Verdict", section_verdict},
    {"check", "Verdict", section_check},
    {"designs", "Design by design", section_checked_designs},
    {"weigh", "What moves a figure", section_weigh},
    {"side-by-side", "Side by side", section_comparison},
    {"network", "Network", section_network},
    {"watts", "Watts", section_flow},
    {"sweep", "Sweep", section_sweep},
    {"reflection", "Reflection", section_reflection},
    {"planes", "Planes", section_planes},
    {"lines", "Lines", section_lines},
    {"ratings", "Ratings", section_ratings},
    {"dial", "Dial", section_settings},
    {"tuning", "Tuning", section_tuning},
    {"warnings", "Warnings", section_warnings},
    {"by-hand", "By hand", section_walk},
    {"cautions", "Cautions", section_cautions},
    {"trust", "Trust", section_trust},
};

/// Of the sections and the document together; the rest of a page is some 40,000 bytes.
constexpr std::size_t most_bytes = 900'000;

/// The markers of curves: filled, and open for loads.
constexpr const char* markers =
    "<svg class=\"defs\" width=\"0\" height=\"0\" aria-hidden=\"true\" focusable=\"false\"><defs>"
    "<circle id=\"m0\" r=\"3.4\"/><rect id=\"m1\" x=\"-3.1\" y=\"-3.1\" width=\"6.2\" height=\"6.2\"/><path id=\"m2\" "
    "d=\"M0-4.2L4 3H-4Z\"/><path id=\"m3\" d=\"M0-4.4L4.4 0L0 4.4L-4.4 0Z\"/>"
    "<circle id=\"m0o\" class=\"open\" r=\"3.4\"/><rect id=\"m1o\" class=\"open\" x=\"-3.1\" y=\"-3.1\" width=\"6.2\" "
    "height=\"6.2\"/><path id=\"m2o\" class=\"open\" d=\"M0-4.2L4 3H-4Z\"/>"
    "<path id=\"m3o\" class=\"open\" d=\"M0-4.4L4.4 0L0 4.4L-4.4 0Z\"/></defs></svg>";

/// Shown by the script: without it the page is complete, and nothing stands here that does nothing.
std::string controls(const Ref& document) {
  const std::size_t variants = document["variants"].size();
  std::string out =
      "<form id=\"controls\" aria-label=\"Frequency and variants\" hidden><div class=\"slide\"><label "
      "for=\"point\">Frequency</label>"
      "<input id=\"point\" type=\"range\" min=\"0\" max=\"0\" step=\"1\" value=\"0\"><output id=\"at\" "
      "for=\"point\"></output></div>";
  if (variants > 1) {
    out += "<fieldset><legend class=\"sr\">Variants shown</legend>";
    for (std::size_t v = 0; v < variants; ++v)
      out += "<label><input type=\"checkbox\" checked data-toggle=\"" + std::to_string(v) + "\">" + swatch(v) +
             "<span>" + escape(variant_name(document["variants"][v])) + "</span></label>";
    out += "</fieldset>";
  }
  return out + "</form>\n";
}

std::string data_section(const std::string& data) {
  const bool thinned = data.find("\"thinned\":[") != std::string::npos;
  return section(
      "data", "For programs", "",
      std::string("<p>The result document stands in this file, in the element <code>result</code>, as JSON with ten "
                  "digits a number") +
          (thinned ? "; of the sweep some points are left out, and <code>thinned</code> says which are there. The "
                     "whole is written by <code>--to json</code>"
                   : "") +
          ". Every number above carries its exact value and its place in the document.</p><p id=\"save-line\" "
          "hidden><button type=\"button\" id=\"save\">Save the data as a file</button></p>");
}

std::string head_of(const std::string& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
         "content=\"width=device-width, initial-scale=1\">\n"
         "<meta name=\"color-scheme\" content=\"light dark\">\n<meta http-equiv=\"Content-Security-Policy\" "
         "content=\"default-src 'none'; style-src 'unsafe-inline'; "
         "script-src 'unsafe-inline'; img-src data:\">\n<link rel=\"icon\" href=\"data:,\">\n<title>" +
         escape(title) + "</title>\n<style>\n" + std::string(assets::page_css) + std::string(assets::drawing_css) +
         "</style>\n</head>\n";
}

/// Of a comparison of files the variants may lack names, or share them: they are called as its columns are.
Json with_labels(Json document) {
  const Json& columns = reports::list(reports::member(document, "compare"), "columns");
  Json& variants = document["variants"];
  for (std::size_t v = 0; v < variants.size() && v < columns.size(); ++v)
    variants[v]["name"] = reports::member(columns[v], "label");
  return document;
}

std::string title_of(const Ref& document) {
  const Ref columns = document["compare"]["columns"];
  std::string labels;
  for (std::size_t c = 0; c < columns.size(); ++c)
    labels += (c == 0 ? "Side by side: " : c + 1 == columns.size() ? " and " : ", ") + columns[c]["label"].text();
  if (!labels.empty()) return labels;
  const std::string title = document["design"]["title"].text();
  if (!title.empty()) return title;
  const std::size_t checked = document["check"]["designs"].size();
  if (document["check"]["designs"].is_list())
    return "Check of " + std::to_string(checked) + (checked == 1 ? " design" : " designs");
  return document["design"]["file"].text();
}

std::string page_of(const Json& json) {
  const Ref document(json);
  const std::string title = title_of(document);
  std::string body, nav;
  std::size_t shown_chapters = 0;
  for (const Chapter& chapter : chapters) {
    const std::string made = chapter.make(document);
    if (made.empty()) continue;
    body += made;
    ++shown_chapters;
    nav += std::string("<li><a href=\"#") + chapter.id + "\">" + chapter.short_name + "</a></li>";
  }
  const std::string data = embedded(json, body.size() + 300'000 < most_bytes ? most_bytes - body.size() : 300'000);
  return head_of(title) + "<body>\n<a class=\"skip\" href=\"#main\">To the report</a>\n" + markers +
         "<header><p class=\"maker\">" + escape(document["program"].text()) + " \u00b7 <span>" +
         escape(document["design"]["file"].text()) + "</span></p><h1>" + escape(title) + "</h1></header>\n" +
         (shown_chapters > 1 ? "<nav aria-label=\"Sections\"><ul>" + nav + "</ul></nav>\n" : "") + controls(document) +
         "<main id=\"main\" tabindex=\"-1\">\n" + body + data_section(data) +
         "</main>\n<footer><p>Arithmetic on what the design says. Local electrical and radio "
         "codes and a licensed operator\u2019s judgement come before anything shown here.</p></footer>\n<script "
         "type=\"application/json\" id=\"result\">" +
         data + "</script>\n" +
         (document["variants"].is_list() ? "<script>\n" + std::string(assets::page_js) + "</script>\n"
                                         : std::string()) +
         "</body>\n</html>\n";
}

}  // namespace

std::string write_page(const Json& document) {
  // Others than runs have no sweep for a script to move through: their pages do without one.
  bool known = reports::member(document, "variants").is_array();
  for (const char* verb : {"walk", "weigh", "check"}) known = known || reports::member(document, verb).is_object();
  if (!known)
    throw std::runtime_error(
        "a page shows runs, comparisons, walks, weighings and checks; this document is none of them");
  return reports::member(document, "compare").is_object() ? page_of(with_labels(document)) : page_of(document);
}

}  // namespace pictures
