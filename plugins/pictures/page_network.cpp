// The drawing, and the fall of watts.
#include "flow.hpp"
#include "markup.hpp"
#include "page_sections.hpp"
#include "picture.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

std::string picture_of(const Ref& document, std::size_t v) {
  const Circuit circuit = read_circuit(document["variants"][v].json(), true);
  const Picture picture = draw(circuit);
  const std::string id = "net-" + std::to_string(v);
  const std::string name = circuit.heading.empty() ? "The network" : "The network of " + circuit.heading;
  return "<div" + variant_mark(v) + ">" + variant_heading(document, v) + "<figure class=\"network\" data-network=\"" +
         std::to_string(v) + "\"" + (circuit.switched ? " data-switched=\"\"" : "") + "><figcaption id=\"" + id +
         "\">" + pretty(circuit.caption) +
         "</figcaption><div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"" + escape(name) +
         ", may scroll sideways\"><svg class=\"net\" width=\"" + coordinate(picture.width) + "\" height=\"" +
         coordinate(picture.height) + "\" viewBox=\"" + coordinate(picture.x) + ' ' + coordinate(picture.y) + ' ' +
         coordinate(picture.width) + ' ' + coordinate(picture.height) +
         "\" style=\"min-width:" + coordinate(picture.width * 0.78) + "px\" role=\"img\" aria-labelledby=\"" + id +
         " " + id + "-words\">" + picture.svg + "</svg></div>" +
         (picture.left_out > 0 ? "<p class=\"note\">" + std::to_string(picture.left_out) +
                                     " parts that take the least heat are left out.</p>"
                               : "") +
         details("The same in words", "<p id=\"" + id + "-words\">" + pretty(picture.description) + "</p>") +
         "</figure></div>\n";
}

std::string goes_in_words(const std::string& goes) {
  if (goes == "radiated") return "on the air";
  if (goes == "load_heat") return "heat of the load";
  if (goes == "returned") return "back to the rig";
  return "heat";
}

std::string books(const Ref& fall, const std::string& name) {
  std::vector<std::vector<Cell>> rows;
  const Ref list = fall["rows"];
  for (std::size_t r = 0; r < list.size(); ++r)
    rows.push_back({{escape(list[r]["name"].text()), true},
                    {escape(goes_in_words(list[r]["goes"].text()) +
                            (list[r]["goes"].text() == "part_heat" ? ", " + list[r]["kind"].text() : ""))},
                    {shown(list[r]["power_w"], "W", 4), false, true},
                    {shown(list[r]["share"], "share", 4), false, true},
                    {shown(list[r]["alone_db"], "dB"), false, true}});
  rows.push_back({{"booked", true},
                  {"of " + shown(fall["available_w"], "W", 4) + " to give"},
                  {shown(fall["sum_w"], "W", 4), false, true},
                  {""},
                  {""}});
  return details("The books " + fall["title"].text(),
                 table("Where the watts go " + fall["title"].text(), name,
                       {"Who", "What becomes of it", ">Watts", ">Share", ">dB alone"}, rows) +
                     "<p class=\"note\">dB alone: what these watts missing would cost if nothing else were lost.</p>");
}

}  // namespace

std::string section_network(const Ref& document) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) out += picture_of(document, v);
  return section("network", "From the rig to the antenna",
                 "Warm bands are heat, thicker where more is lost; its watts stand beside. An arrow across a part says "
                 "that it can be adjusted.",
                 out);
}

std::string section_flow(const Ref& document) {
  std::string out;
  for (std::size_t v = 0; v < document["variants"].size(); ++v) {
    const Ref variant = document["variants"][v], falls = variant["waterfalls"];
    if (falls.size() == 0) continue;
    out += "<div" + variant_mark(v) + ">" + variant_heading(document, v) + "<div class=\"flows\">";
    for (std::size_t f = 0; f < falls.size(); ++f)
      out += draw_flow(document, v, falls[f]["point"].count(), f == 0,
                       "flow-" + std::to_string(v) + '-' + std::to_string(f), falls[f]["title"].text());
    out += "</div>";
    for (std::size_t f = 0; f < falls.size(); ++f) out += books(falls[f], variant_name(variant));
    out += "</div>\n";
  }
  return section("watts", "Where the watts go",
                 "The stream starts at the rig. What a part takes leaves it to the right, in the order of the way; "
                 "what reaches the foot is on the air.",
                 out);
}

}  // namespace pictures
