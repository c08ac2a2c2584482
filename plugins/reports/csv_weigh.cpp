// `weigh` as comma-separated values: a row a figure and value, in the order of their weight.
#include "csv.hpp"

namespace reports {

std::string write_weigh_csv(const Json& document) {
  std::string out = "variant,figure,figure_unit,frequency_hz,figure_value,name,unit,nominal,per_unit,per_percent,line\r\n";
  for (const Json& variant : list(member(document, "weigh"), "variants"))
    for (const Json& figure : list(variant, "figures")) {
      std::string begin = quote(raw_text(member(variant, "name"))) + ',' + quote(raw_text(member(figure, "text"))) + ',' + quote(raw_text(member(figure, "unit"))) + ',';
      append_number(begin, number(figure, "frequency_hz"));
      begin += ',';
      append_number(begin, number(figure, "value"));
      for (const Json& value : list(figure, "values")) {
        out += begin + ',' + quote(raw_text(member(value, "name"))) + ',' + quote(raw_text(member(value, "unit")));
        for (const char* key : {"nominal", "per_unit", "per_percent", "line"}) {
          out += ',';
          append_number(out, number(value, key));
        }
        out += "\r\n";
      }
    }
  return out;
}

}  // namespace reports
