// Test results as CI servers read them: JUnit's XML, the form in tests/formats/junit.xsd. A suite a variant, or a design; a case a requirement, a rating,
// a figure held to its baseline. No times stand in it, so that the same input gives the same bytes.
#include <stdexcept>

#include "code_points.hpp"
#include "text_sections.hpp"
#include "writers.hpp"

namespace reports {
namespace {

/// Safe in an attribute and between tags: XML 1.0 has no place for the characters that `text` replaces, nor for U+FFFE and U+FFFF.
std::string escape(std::string_view plain) {
  std::string out;
  while (!plain.empty()) {
    const std::size_t length = code_point_length(plain);
    const std::string_view one = plain.substr(0, length);
    const char32_t c = code_point(one);
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"') {
      out += "&quot;";
    } else if (c == '\n') {
      out += "&#10;";
    } else if (c < 0x20 || c == 0xFFFE || c == 0xFFFF) {
      out += '?';
    } else {
      out += one;
    }
    plain.remove_prefix(length);
  }
  return out;
}

struct Case {
  std::string name;
  std::string type;     ///< "requirement", "rating", "baseline"
  std::string failure;  ///< empty where it passes
  bool skipped = false;
};

struct Suite {
  std::string name;
  std::vector<Case> cases;
  std::string details;  ///< stands under each failure
};

std::size_t failures(const Suite& suite) {
  std::size_t count = 0;
  for (const Case& one : suite.cases) count += one.failure.empty() ? 0 : 1;
  return count;
}

std::size_t skipped(const Suite& suite) {
  std::size_t count = 0;
  for (const Case& one : suite.cases) count += one.skipped ? 1 : 0;
  return count;
}

std::string attribute(const char* name, const std::string& value) {
  return std::string(" ") + name + "=\"" + escape(value) + '"';
}

std::string attribute(const char* name, std::size_t value) {
  return attribute(name, std::to_string(value));
}

std::string xml_of(const Suite& suite) {
  std::string out = "  <testsuite" + attribute("name", suite.name) + attribute("tests", suite.cases.size()) + attribute("failures", failures(suite)) +
                    attribute("errors", 0) + attribute("skipped", skipped(suite)) + ">\n";
  for (const Case& one : suite.cases) {
    out += "    <testcase" + attribute("name", one.name) + attribute("classname", suite.name);
    if (one.skipped) {
      out += "><skipped/></testcase>\n";
    } else if (one.failure.empty()) {
      out += "/>\n";
    } else {
      const std::string details = one.failure + (suite.details.empty() ? "" : '\n' + suite.details);
      out += ">\n      <failure" + attribute("message", one.failure) + attribute("type", one.type) + '>' + escape(details) + "</failure>\n    </testcase>\n";
    }
  }
  return out + "  </testsuite>\n";
}

// ---- a run, or a comparison -------------------------------------------------------------------------------------

Suite suite_of_variant(const Json& document, const Json& variant, std::size_t index) {
  const Json& column = item(member(member(document, "compare"), "columns"), index);
  const std::string label = text(column, "label"), name = text(variant, "name");
  Suite suite{label.empty() ? text(member(document, "design"), "file") + (name.empty() ? "" : ": " + name) : label, {}, {}};
  const Json& failed = list(member(variant, "verdict"), "failures");  // in the order of the requirements, then of the ratings
  std::size_t next = 0;
  for (const Json& one : list(variant, "requirements"))
    suite.cases.push_back({text(one, "text"), "requirement", flag(one, "met") ? "" : text(item(failed, next++)), false});
  for (const Json& one : list(variant, "ratings"))
    suite.cases.push_back({"rating of " + text(one, "part") + ", " + text(one, "unit"), "rating", flag(one, "kept") ? "" : text(item(failed, next++)), false});
  return suite;
}

// ---- a check ----------------------------------------------------------------------------------------------------

std::string changes_of(const Json& design) {
  std::string lines;
  for (const Json& change : list(design, "changes")) {
    lines += lines.empty() ? "Changed since the baseline:\n" : "\n";
    if (member(change, "line").is_number()) lines += text(change, "file") + ':' + std::to_string(count(change, "line")) + ": ";
    lines += change_words(change);
  }
  return lines;
}

std::string broken_baseline(const Json& variant, const Json& figure) {
  for (const Json& broken : list(variant, "broken"))
    if (text(broken, "kind") == "baseline" && member(broken, "figure") == member(figure, "figure")) return text(broken, "text");
  return "";
}

Suite suite_of_design(const Json& design) {
  Suite suite{text(design, "file"), {}, changes_of(design)};
  for (const Json& variant : list(design, "variants")) {
    const std::string before = text(variant, "name").empty() ? "" : text(variant, "name") + ": ";
    for (const Json& one : list(variant, "asked")) suite.cases.push_back({before + text(one, "text"), text(one, "kind"), text(one, "said"), false});
    for (const Json& figure : list(variant, "figures"))
      suite.cases.push_back({before + "baseline of " + text(figure, "figure") + (text(figure, "bound") == "below" ? " (less is better)" : " (more is better)"), "baseline",
                             broken_baseline(variant, figure), text(figure, "state") == "new"});
  }
  return suite;
}

std::vector<Suite> suites_of(const Json& document) {
  std::vector<Suite> suites;
  if (member(document, "check").is_object()) {
    for (const Json& design : list(member(document, "check"), "designs")) suites.push_back(suite_of_design(design));
    return suites;
  }
  const Json& variants = member(document, "variants");
  if (!variants.is_array()) throw std::runtime_error("junit shows runs, comparisons and checks; this document is none");
  for (std::size_t i = 0; i < variants.size(); ++i) suites.push_back(suite_of_variant(document, variants[i], i));
  return suites;
}

}  // namespace

std::string write_junit(const Json& document) {
  const std::vector<Suite> suites = suites_of(document);
  std::size_t tests = 0, failed = 0, left_out = 0;
  for (const Suite& suite : suites) {
    tests += suite.cases.size();
    failed += failures(suite);
    left_out += skipped(suite);
  }
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites" + attribute("name", "wattfall " + text(document, "verb")) + attribute("tests", tests) +
                    attribute("failures", failed) + attribute("errors", 0) + attribute("skipped", left_out) + ">\n";
  for (const Suite& suite : suites) out += xml_of(suite);
  return out + "</testsuites>\n";
}

}  // namespace reports
