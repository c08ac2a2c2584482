#include "flow.hpp"

#include <algorithm>
#include <cmath>

#include "circuit.hpp"
#include "lettering.hpp"
#include "markup.hpp"
#include "order.hpp"
#include "trade.hpp"

namespace pictures {
namespace {

constexpr double full = 130.0;   // pixels of the whole available power
constexpr double spout = 182.0;  // where streams that leave end
constexpr double width = 380.0, least_row = 42.0, head = 46.0, turn = 10.0;
constexpr std::size_t most_rows = 26;

struct Stream {
  std::string name, path;  ///< within the variant, without the point: "parts/0/heat_w"
  std::string style;       ///< "heat", "back", "air"
  Ref watts;
  double largest = 0.0;  ///< over the sweep
  int place = 0;         ///< columns from the rig
};

double largest_of(const Ref& series) {
  double most = 0.0;
  for (const Json& value : series.json())
    if (value.is_number()) most = std::max(most, value.get<double>());
  return most;
}

/// How far right in the drawing a part stands.
int place_of(const Circuit& circuit, const std::vector<int>& order, const std::string& name) {
  int place = static_cast<int>(order.size());
  for (const Item& item : circuit.items) {
    if (item.name != name) continue;
    int last = -1;
    for (const int node : item.nodes)
      if (node != ground)
        last = std::max(last, static_cast<int>(std::find(order.begin(), order.end(), node) - order.begin()));
    place = last;
  }
  return place;
}

std::vector<Stream> streams_of(const Ref& variant, std::size_t point) {
  std::vector<Stream> streams;
  const auto add = [&](const std::string& name, const std::string& path, const char* style, const Ref& series,
                       int place) {
    streams.push_back({name, path, style, series[point], largest_of(series), place});
  };
  const Circuit circuit = read_circuit(variant.json());
  const std::vector<int> order = order_nodes(circuit).nodes;
  const Ref source = variant["sources"][std::size_t{0}];
  add("back to " + source["name"].text(), "sources/0/returned_w", "back", source["returned_w"], -1);
  const Ref parts = variant["parts"], loads = variant["loads"];
  for (std::size_t p = 0; p < parts.size(); ++p)
    add(parts[p]["name"].text(), "parts/" + std::to_string(p) + "/heat_w", "heat", parts[p]["heat_w"],
        place_of(circuit, order, parts[p]["name"].text()));
  for (std::size_t l = 0; l < loads.size(); ++l)
    add(loads[l]["name"].text() + ", as heat", "loads/" + std::to_string(l) + "/heat_w", "heat", loads[l]["heat_w"],
        100000);
  std::stable_sort(streams.begin(), streams.end(), [](const Stream& a, const Stream& b) { return a.place < b.place; });
  for (std::size_t l = 0; l < loads.size(); ++l)
    add(loads[l]["name"].text() + ", on the air", "loads/" + std::to_string(l) + "/radiated_w", "air",
        loads[l]["radiated_w"], 100001);
  return streams;
}

/// What takes something somewhere in the sweep; of very many parts the thirstiest.
std::size_t leave_out_trickles(std::vector<Stream>& streams, double available_w) {
  const std::size_t all = streams.size();
  std::vector<double> sizes;
  for (const Stream& stream : streams) sizes.push_back(stream.largest);
  std::sort(sizes.rbegin(), sizes.rend());
  const double limit = std::max(5e-4 * available_w, sizes.size() > most_rows ? sizes[most_rows - 1] : 0.0);
  std::erase_if(streams, [&](const Stream& stream) { return stream.style != "air" && stream.largest < limit; });
  return all - streams.size();
}

/// Down along the stream's left part, and out to the right.
std::string stream_path(double x, double wide, double from, double y) {
  const double outer = x + wide;
  return "M" + coordinate(x) + ' ' + coordinate(from) + 'L' + coordinate(x) + ' ' + coordinate(y + wide) + 'Q' +
         coordinate(x) + ' ' + coordinate(y + wide + turn) + ' ' + coordinate(x + turn) + ' ' +
         coordinate(y + wide + turn) + 'L' + coordinate(spout) + ' ' + coordinate(y + wide + turn) + 'L' +
         coordinate(spout) + ' ' + coordinate(y + turn) + 'L' + coordinate(outer + turn) + ' ' + coordinate(y + turn) +
         'Q' + coordinate(outer) + ' ' + coordinate(y + turn) + ' ' + coordinate(outer) + ' ' + coordinate(y) + 'L' +
         coordinate(outer) + ' ' + coordinate(from) + 'Z';
}

}  // namespace

std::string draw_flow(const Ref& document, std::size_t v, std::size_t point, bool live, const std::string& id,
                      const std::string& title) {
  const Ref variant = document["variants"][v];
  const double available_w = variant["totals"]["available_w"][point].number();
  std::vector<Stream> streams = streams_of(variant, point);
  const std::size_t left_out = leave_out_trickles(streams, available_w);
  double remaining = full, y = head, air = full;
  std::string svg;
  for (const Stream& stream : streams) {
    const double watts = stream.watts.number(),
                 share = std::isfinite(watts / available_w) ? std::max(0.0, watts / available_w) : 0.0;
    const double wide = std::min(full * share, remaining), shown_wide = std::max(wide, share > 0.0 ? 0.8 : 0.0);
    air = remaining - wide;
    svg += "<g class=\"stream\" data-path=\"" + stream.path + "\"><path class=\"" + stream.style + "\" d=\"" +
           stream_path(10.0 + air, shown_wide, head - 8.0, y) + "\"/>";
    const double middle = y + turn + wide / 2.0;
    const std::string percent = share > 0.0 && share < 5e-4 ? "<0.1" : reports::fixed(100.0 * share, 1);
    svg += "<text class=\"who\" x=\"" + coordinate(spout + 8.0) + "\" y=\"" + coordinate(middle - 3.0) + "\">" +
           escape(fit(stream.name, width - spout - 10.0, 14.0, true)) + "</text><text class=\"watts\" x=\"" +
           coordinate(spout + 8.0) + "\" y=\"" + coordinate(middle + 14.0) + "\">" +
           (watts != 0.0 && std::abs(watts) < 1e-15 ? "&lt;1 fW" : pretty(reports::spell(watts, "W"))) + " \u00b7 " +
           pretty(percent) + " %</text></g>";
    remaining = air;
    y += std::max({least_row, wide + 12.0, wide / 2.0 + 40.0});
  }
  const double height = y + 10.0;
  const std::string source = variant["sources"][std::size_t{0}]["name"].text();
  const std::string said = title + ": of " + reports::spell(available_w, "W") + " from " + source;
  return "<figure class=\"flow\"" + std::string(live ? " data-flow=\"" + std::to_string(v) + '"' : "") +
         variant_mark(v) + "><figcaption id=\"" + id + "\">" + pretty(title) + "</figcaption><svg viewBox=\"0 0 380 " +
         coordinate(height) + "\" role=\"img\" aria-label=\"" + escape(said) +
         "; the table has the numbers\"><text class=\"who\" x=\"10\" y=\"16\">" +
         escape(fit(source, 200.0, 13.0, true)) + "</text><text class=\"watts from\" x=\"10\" y=\"33\">" +
         pretty(reports::spell(available_w, "W")) + " to give</text>" + svg + "</svg>" +
         (left_out > 0 ? "<p class=\"note\">" + std::to_string(left_out) +
                             (left_out == 1 ? " entry that takes" : " entries that take") + " less at every point " +
                             (left_out == 1 ? "is" : "are") + " in the table only.</p>"
                       : "") +
         "</figure>\n";
}

}  // namespace pictures
