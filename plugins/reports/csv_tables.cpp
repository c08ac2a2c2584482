// `compare` and `check` as comma-separated values: a row a figure.
#include "csv.hpp"

namespace reports {
namespace {

/// Cells of one row; the line's end is put by `end`.
class Row {
 public:
  explicit Row(std::string& out) : out_(out) {}
  void add(const std::string& cell) {
    separate();
    out_ += quote(cell);
  }
  void add(const Json& value) {
    separate();
    append_number(out_, number(value));
  }
  void end() { out_ += "\r\n"; }

 private:
  void separate() {
    if (any_) out_ += ',';
    any_ = true;
  }
  std::string& out_;
  bool any_ = false;
};

void add_contest(std::string& out, const Json& compare, const std::string& name, const std::string& unit, const char* where, const Json& contest) {
  const Json& columns = list(compare, "columns");
  const Json& better = member(contest, "better");
  Row row(out);
  row.add(name);
  row.add(unit);
  row.add(std::string(where));
  row.add(better.is_number_unsigned() ? raw_text(member(item(columns, better.get<std::size_t>()), "label")) : std::string());
  row.add(member(contest, "lead"));
  for (std::size_t i = 0; i < columns.size(); ++i) {
    row.add(item(member(contest, "values"), i));
    row.add(item(member(contest, "at_hz"), i));
  }
  row.end();
}

}  // namespace

std::string write_compare_csv(const Json& document) {
  const Json& compare = member(document, "compare");
  std::string out;
  Row head(out);
  for (const char* name : {"figure", "unit", "where", "better", "lead"}) head.add(std::string(name));
  for (const Json& column : list(compare, "columns")) {
    head.add("value:" + raw_text(member(column, "label")));
    head.add("at_hz:" + raw_text(member(column, "label")));
  }
  head.end();
  for (const Json& figure : list(compare, "figures"))
    for (const char* where : {"worst", "middle"})
      add_contest(out, compare, raw_text(member(figure, "figure")), raw_text(member(figure, "unit")), where, member(figure, where));
  for (const Json& figure : list(compare, "required"))
    add_contest(out, compare, raw_text(member(figure, "figure")), raw_text(member(figure, "unit")), "required", figure);
  return out;
}

std::string write_check_csv(const Json& document) {
  std::string out;
  Row head(out);
  for (const char* name : {"file", "variant", "kind", "figure", "unit", "before", "after", "limit", "tolerance", "change", "at_hz", "state"})
    head.add(std::string(name));
  head.end();
  for (const Json& design : list(member(document, "check"), "designs"))
    for (const Json& variant : list(design, "variants")) {
      const auto add = [&](const Json& one, const std::string& kind, const std::string& state) {
        Row row(out);
        row.add(raw_text(member(design, "file")));
        row.add(raw_text(member(variant, "name")));
        row.add(kind);
        for (const char* key : {"figure", "unit"}) row.add(raw_text(member(one, key)));
        for (const char* key : {"before", "after", "limit", "tolerance", "change", "at_hz"}) row.add(member(one, key));
        row.add(state);
        row.end();
      };
      for (const Json& figure : list(variant, "figures")) add(figure, "figure", raw_text(member(figure, "state")));
      for (const Json& broken : list(variant, "broken"))
        if (raw_text(member(broken, "kind")) != "baseline") add(broken, raw_text(member(broken, "kind")), "broken");
    }
  return out;
}

}  // namespace reports
