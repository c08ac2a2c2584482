// The hand calculation on a page: each way as a table of steps with their sentences, both planes, and how it agrees
// with the solver.
#include "markup.hpp"
#include "page_sections.hpp"

namespace pictures {
namespace {

using Rows = std::vector<std::vector<Cell>>;

std::string ohms_of(const Ref& value) {
  return value.is_list() ? shown_complex(value) : "open";
}

void add_step(Rows& rows, const Ref& step, const std::string& index) {
  const std::string rule = step["rule"].text();
  const bool adds = rule == "series" || rule == "parallel";
  rows.push_back({{index},
                  {escape(step["name"].text()), true},
                  {escape(step["rule_words"].text())},
                  {adds ? ohms_of(step["added_ohm"]) : "", false, true},
                  {ohms_of(step["after_ohm"]), false, true},
                  {shown(step["lost_w"], "W"), false, true},
                  {pretty(step["sentence"].text()), false, false, -1, true}});
  for (std::size_t i = 0; i < step["inside"].size(); ++i)
    add_step(rows, step["inside"][i], index + '.' + std::to_string(i + 1));
}

std::string way_of(const Ref& way, const std::string& caption, const std::string& also) {
  Rows rows;
  for (std::size_t i = 0; i < way["steps"].size(); ++i) add_step(rows, way["steps"][i], std::to_string(i + 1));
  std::string out =
      table(caption, also, {"Step", "Part", "Rule", ">Adds", ">Makes", ">Lost", "Why"}, rows, Narrow::stacks);
  const Ref stop = way["stop"];
  if (stop.json().is_object()) {
    out += "<p><strong>Stopped.</strong> " + pretty(stop["sentence"].text());
    if (stop["solver_ohm"].is_list()) out += " The solver finds " + shown_complex(stop["solver_ohm"]) + ".";
    out += "</p>";
  }
  return out;
}

std::string planes_of(const Ref& variant, const std::string& also) {
  Rows rows;
  const Ref planes = variant["planes"];
  for (std::size_t p = 0; p < planes.size(); ++p)
    rows.push_back({{escape(planes[p]["name"].text()), true},
                    {ohms_of(planes[p]["toward_load_ohm"]), false, true},
                    {ohms_of(planes[p]["toward_source_ohm"]), false, true},
                    {ohms_of(planes[p]["conjugate_ohm"]), false, true},
                    {shown(planes[p]["mismatch_db"], "dB", 2), false, true}});
  return rows.empty() ? ""
                      : table("Both ways from each plane", also,
                              {"At", ">Toward the load", ">Toward the source", ">Its conjugate", ">Missed"}, rows);
}

}  // namespace

std::string section_walk(const Ref& document) {
  const Ref variants = document["walk"]["variants"];
  std::string out;
  for (std::size_t v = 0; v < variants.size(); ++v) {
    const Ref one = variants[v];
    const std::string name = one["name"].text(), load = one["load"]["name"].text(),
                      source = one["source"]["name"].text(), chosen = one["chosen"].text();
    out += "<div>" + (name.empty() ? std::string() : "<h3>" + escape(name) + "</h3>") + "<p>At " +
           shown(one["frequency_hz"], "Hz", 6) + (chosen.empty() ? "" : ", " + escape(chosen)) + ".</p>" +
           way_of(one["to_source"], "From the load " + load + " to the source " + source, name) +
           way_of(one["to_load"], "From the source " + source + " to the load " + load, name) + planes_of(one, name) +
           "<p>" + pretty(one["agreement"]["sentence"].text()) + "</p></div>\n";
  }
  return section("by-hand", "By hand",
                 "Parts that share a current are added as R + jX, parts that share a voltage as G + jB; lines, "
                 "transformers and two-ports turn what ends them "
                 "into something else.",
                 out);
}

}  // namespace pictures
