// The writer `drawing`: one SVG file, every variant's network below the other.
#include <algorithm>
#include <stdexcept>

#include "assets.hpp"
#include "lettering.hpp"
#include "markup.hpp"
#include "picture.hpp"
#include "writers.hpp"

namespace pictures {
namespace {

constexpr double margin = 24.0, title_px = 20.0, heading_px = 15.0, caption_px = 12.5;

std::string text_at(double x, double y, const char* style, const std::string& said) {
  return std::string("<text class=\"") + style + "\" x=\"" + coordinate(x) + "\" y=\"" + coordinate(y) + "\">" +
         escape(said) + "</text>\n";
}

/// What of the picture is not drawn, in words.
std::string legend(bool heat) {
  return heat ? "Warm bands: heat, thicker where more is lost; its watts stand beside."
              : "No part takes a two-thousandth of the power as heat.";
}

}  // namespace

std::string write_drawing(const Json& document) {
  const Json& variants = reports::member(document, "variants");
  if (!variants.is_array()) throw std::runtime_error("a drawing shows runs; this document has no \"variants\"");
  const std::string title = reports::raw_text(reports::member(reports::member(document, "design"), "title"));
  std::vector<Circuit> circuits;
  std::vector<Picture> pictures;
  double width = 560.0;
  for (const Json& variant : variants) {
    circuits.push_back(read_circuit(variant));
    pictures.push_back(draw(circuits.back()));
    width = std::max(width, pictures.back().width);
  }
  std::string body, description;
  double y = 0.0;
  if (!title.empty()) body += text_at(margin, y = margin + title_px, "t-title", fit(title, width, title_px, true));
  bool heat = false;
  for (std::size_t v = 0; v < pictures.size(); ++v) {
    const Picture& picture = pictures[v];
    y += 30.0;
    if (!circuits[v].heading.empty())
      body += text_at(margin, y, "t-heading", fit(circuits[v].heading, width, heading_px, true)), y += 19.0;
    body += text_at(margin, y, "t-caption", fit(circuits[v].caption, width, caption_px));
    if (picture.left_out > 0)
      body += text_at(margin, y += 18.0, "t-caption",
                      std::to_string(picture.left_out) + " parts that take the least heat are left out.");
    y += 10.0;
    body += "<svg class=\"net\" x=\"" + coordinate(margin) + "\" y=\"" + coordinate(y) + "\" width=\"" +
            coordinate(picture.width) + "\" height=\"" + coordinate(picture.height) + "\" viewBox=\"" +
            coordinate(picture.x) + ' ' + coordinate(picture.y) + ' ' + coordinate(picture.width) + ' ' +
            coordinate(picture.height) + "\">\n" + picture.svg + "\n</svg>\n";
    y += picture.height + 6.0;
    heat = heat || picture.svg.find("class=\"heat\"") != std::string::npos;
    description += (circuits[v].heading.empty() ? "" : circuits[v].heading + ": ") + picture.description + ' ';
  }
  y += 14.0;
  body += text_at(margin, y, "t-caption", fit(legend(heat), width, caption_px));
  const std::string w = coordinate(width + 2.0 * margin), h = coordinate(y + margin);
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w + "\" height=\"" + h + "\" viewBox=\"0 0 " + w + ' ' +
         h + "\" class=\"sheet\" role=\"img\" aria-labelledby=\"title description\">\n<title id=\"title\">" +
         escape(title.empty() ? "A feed system" : title) + "</title>\n<desc id=\"description\">" + escape(description) +
         "</desc>\n<style>\n" + std::string(assets::drawing_css) + "</style>\n<rect class=\"paper\" width=\"" + w +
         "\" height=\"" + h + "\"/>\n" + body + "</svg>\n";
}

}  // namespace pictures
