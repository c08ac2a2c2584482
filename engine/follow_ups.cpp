#include "follow_ups.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <set>
#include <string>
#include <string_view>

namespace wattfall {
namespace {

using Codes = std::set<std::string_view>;

/// Something of the whole design is missing: any statement may have been it.
const Codes missing_in_design{"no-source", "no-sweep"};
/// A name is unknown, or its part is not what it should be.
const Codes about_a_name{"unknown-part",     "unknown-node",    "unknown-knob",   "unknown-quantity", "unknown-kind",
                         "unknown-band",     "unknown-variant", "unknown-name",   "unknown-box",      "unknown-member",
                         "not-adjustable",   "ambiguous-look",  "ambiguous-knob", "unset-knob",       "port-count",
                         "unknown-property", "wrong-kind"};
/// Something of the statement is missing or out of its place.
const Codes missing_in_statement{"missing-value", "value-without-name", "unexpected-words", "port-count",
                                 "wrong-places",  "unset-knob",         "wrong-dimension",  "not-a-value"};
/// The text, or what follows in it, was not read at all.
const Codes given_up{"too-many-mistakes", "file-too-long"};
/// What follows is no statement that defines a name for others.
const Codes defines_nothing{"tune", "require", "sweep", "design", "include"};

bool is_letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || (c & 0x80) != 0;
}

/// Words and strings (without their quotes) of a text, its comments left out.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '#') {
      at = std::min(text.find('\n', at), text.size());
    } else if (text[at] == '"') {
      const std::size_t end = std::min(text.find_first_of("\"\n", at + 1), text.size());
      words.emplace_back(text.substr(at + 1, end - at - 1));
      at = std::min(end + 1, text.size());
    } else if (is_letter(text[at])) {
      const std::size_t begin = at;
      while (at < text.size() && is_letter(text[at])) ++at;
      words.emplace_back(text.substr(begin, at - begin));
    } else {
      ++at;
    }
  }
  return words;
}

/// The line, and those before it that go on in it: they end in a comma or an open bracket.
std::string_view statement_at(Span span) {
  const Source& source = *span.source;
  const int last = source.position(span.begin).line;
  const auto goes_on = [&source](int line) {
    std::string_view text = source.line(line);
    text = text.substr(0, text.find('#'));
    const std::size_t end = text.find_last_not_of(" \t\r");
    return end != std::string_view::npos && std::string_view(",([").find(text[end]) != std::string_view::npos;
  };
  int first = last;
  while (first > 1 && last - first < 100 && goes_on(first - 1)) --first;
  const std::string_view begin = source.line(first), end = source.line(last);
  return {begin.data(), static_cast<std::size_t>(end.data() + end.size() - begin.data())};
}

/// What the statements that could not be read may have brought.
class Lost {
 public:
  void add(const Diagnostic& mistake) {
    any_statement_ = true;
    if (mistake.span.source == nullptr) return;
    const std::string_view statement = statement_at(mistake.span);
    statements_.push_back(statement);
    const std::vector<std::string> words = words_of(statement);
    if (words.empty()) return;
    any_name_ |= words[0] == "include" || given_up.contains(mistake.code);
    if (defines_nothing.contains(words[0])) return;
    mentioned_.insert(words.begin(), words.end());
    names_.insert(words.begin(), words.begin() + std::min<std::ptrdiff_t>(2, std::ssize(words)));
  }

  bool may_explain(const Diagnostic& found) const {
    if (missing_in_design.contains(found.code)) return any_statement_;
    if (found.span.source == nullptr) return any_statement_ && about_a_name.contains(found.code);
    if (missing_in_statement.contains(found.code) && stands_in_one(found.span)) return true;
    if (!about_a_name.contains(found.code)) return false;
    if (any_name_ && found.hint.empty()) return true;  // a near name is the likelier reason
    const bool about_a_node = found.code == "unknown-node" || found.code == "ambiguous-look";
    const std::set<std::string>& lost = about_a_node ? mentioned_ : names_;
    const std::vector<std::string> words = words_of(found.span.text());
    return std::any_of(words.begin(), words.end(), [&lost](const std::string& word) { return lost.contains(word); });
  }

 private:
  bool stands_in_one(Span span) const {
    const std::string_view own = statement_at(span);
    return std::any_of(statements_.begin(), statements_.end(),
                       [own](std::string_view one) { return one.data() == own.data(); });
  }

  std::vector<std::string_view> statements_;
  std::set<std::string> names_;      ///< that a statement may have defined
  std::set<std::string> mentioned_;  ///< all words: its nodes are among them
  bool any_statement_ = false, any_name_ = false;
};

bool may_follow(const Diagnostic& found) {
  return missing_in_design.contains(found.code) || about_a_name.contains(found.code) ||
         missing_in_statement.contains(found.code);
}

bool about_an_include(const Diagnostic& found) {
  if (found.span.source == nullptr) return false;
  const std::vector<std::string> words = words_of(statement_at(found.span));
  return !words.empty() && words[0] == "include";
}

}  // namespace

Diagnostics without_follow_ups(const Source& text, const Diagnostics& unread, Diagnostics found) {
  Lost lost;
  for (const Diagnostic& mistake : unread) lost.add(mistake);
  for (const Diagnostic& mistake : found)
    if (!may_follow(mistake) &&
        (about_an_include(mistake) || (mistake.span.source != nullptr && mistake.span.source != &text)))
      lost.add(mistake);
  // What is dropped was to define names of its own: again, until nothing more follows.
  for (bool again = true; again;) {
    const auto kept = std::stable_partition(found.begin(), found.end(),
                                            [&lost](const Diagnostic& one) { return !lost.may_explain(one); });
    again = kept != found.end();
    for (auto dropped = kept; dropped != found.end(); ++dropped) lost.add(*dropped);
    found.erase(kept, found.end());
  }
  return found;
}

bool gave_up(const Diagnostics& unread) {
  return std::any_of(unread.begin(), unread.end(), [](const Diagnostic& one) { return given_up.contains(one.code); });
}

}  // namespace wattfall
