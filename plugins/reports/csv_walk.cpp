// A walk as comma-separated values: a row a step, those inside a step below it.
#include "csv.hpp"
#include "walk_reading.hpp"

namespace reports {
namespace {

constexpr const char* heads =
    "variant,frequency_hz,way,step,rule,name,what,line,node,before_r_ohm,before_x_ohm,added_r_ohm,added_x_ohm,after_r_ohm,after_x_ohm,lost_w,taken_w,sentence\r\n";

void append_complex(std::string& out, const Json& impedance) {
  for (std::size_t half = 0; half < 2; ++half) {
    out += ',';
    append_number(out, number(item(impedance, half)));
  }
}

void append_way(std::string& out, const std::string& begin, const char* name, const Json& way) {
  for (const WalkRow& row : rows_of(way)) {
    const Json& step = *row.step;
    out += begin + ',' + name + ',' + row.number;
    for (const char* key : {"rule", "name", "what"}) out += ',' + quote(raw_text(member(step, key)));
    out += ',';
    append_number(out, number(step, "line"));
    out += ',' + quote(raw_text(member(step, "node")));
    for (const char* key : {"before_ohm", "added_ohm", "after_ohm"}) append_complex(out, member(step, key));
    for (const char* key : {"lost_w", "taken_w"}) {
      out += ',';
      append_number(out, number(step, key));
    }
    out += ',' + quote(raw_text(member(step, "sentence"))) + "\r\n";
  }
}

}  // namespace

std::string write_walk_csv(const Json& document) {
  std::string out = heads;
  for (const Json& variant : list(member(document, "walk"), "variants")) {
    std::string begin = quote(raw_text(member(variant, "name"))) + ',';
    append_number(begin, number(variant, "frequency_hz"));
    append_way(out, begin, "to_source", member(variant, "to_source"));
    append_way(out, begin, "to_load", member(variant, "to_load"));
  }
  return out;
}

}  // namespace reports
