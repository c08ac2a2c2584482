// The option line, `# GHz S MA R 50`, and the plain layout of version 1 files: one such line, then numbers.
#include <array>
#include <string>

#include "grammar/nearest_name.hpp"
#include "header.hpp"

namespace wattfall::measured {
namespace {

enum Kind { unit, parameter, format, reference, kinds };

constexpr std::array<const char*, kinds> kind_names = {"frequency unit", "parameter", "format", "reference"};

struct Choice {
  const char* word;
  Kind kind;
  void (*apply)(Options&);
};

const Choice choices[] = {
    {"hz", unit, [](Options& o) { o.unit_hz = 1; }},
    {"khz", unit, [](Options& o) { o.unit_hz = 1e3; }},
    {"mhz", unit, [](Options& o) { o.unit_hz = 1e6; }},
    {"ghz", unit, [](Options& o) { o.unit_hz = 1e9; }},
    {"s", parameter, [](Options& o) { o.immittance.reset(); }},
    {"y", parameter, [](Options& o) { o.immittance = Immittance::admittance; }},
    {"z", parameter, [](Options& o) { o.immittance = Immittance::impedance; }},
    {"g", parameter, [](Options& o) { o.immittance = Immittance::inverse_hybrid; }},
    {"h", parameter, [](Options& o) { o.immittance = Immittance::hybrid; }},
    {"ri", format, [](Options& o) { o.format = NumberFormat::real_imaginary; }},
    {"ma", format, [](Options& o) { o.format = NumberFormat::magnitude_angle; }},
    {"db", format, [](Options& o) { o.format = NumberFormat::decibel_angle; }},
    {"r", reference, [](Options&) {}},
};

const Choice* find_choice(std::string_view word) {
  const std::string name = lower(word);
  for (const Choice& choice : choices) {
    if (name == choice.word) return &choice;
  }
  return nullptr;
}

void refuse_option(const Word& word, bool after_reference, Mistakes& mistakes) {
  const bool glued = word.text.size() > 1 && lower(word.text)[0] == 'r' && word.text[1] >= '0' && word.text[1] <= '9';
  std::string hint = nearest_name(word.text, {"Hz", "kHz", "MHz", "GHz", "RI", "MA", "DB"});
  if (glued) hint = "R " + std::string(word.text.substr(1));
  mistakes.add("touchstone-unknown-option", mistakes.span(word), quoted(word.text) + " is not an option",
               after_reference ? "one resistance (version 2 has [Reference] for one a port)"
                               : "Hz, kHz, MHz or GHz; S, Y, Z, G or H; RI, MA or DB; R and a resistance",
               hint);
}

/// The words of one option line, taken one by one.
class OptionReader {
 public:
  explicit OptionReader(Mistakes& mistakes) : mistakes_(mistakes) {}

  Options read(const std::vector<Word>& words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
      const Choice* choice = find_choice(words[i].text);
      if (choice == nullptr) {
        refuse_option(words[i], i >= 2 && lower(words[i - 2].text) == "r", mistakes_);
        continue;
      }
      if (!first_of_kind(*choice, words[i])) {
        if (choice->kind == reference) ++i;
        continue;
      }
      choice->apply(options_);
      if (choice->kind == reference) take_reference(words, i);
    }
    return options_;
  }

 private:
  bool first_of_kind(const Choice& choice, const Word& word) {
    if (seen_[choice.kind].source == nullptr) {
      seen_[choice.kind] = mistakes_.span(word);
      return true;
    }
    mistakes_.add("touchstone-option-twice", mistakes_.span(word),
                  std::string("a second ") + kind_names[choice.kind] + " on the option line");
    mistakes_.note(seen_[choice.kind], "the first");
    return false;
  }

  void take_reference(const std::vector<Word>& words, std::size_t& i) {
    if (i + 1 == words.size()) {
      mistakes_.add("touchstone-reference", mistakes_.span(words[i]), "R without its resistance", "R 50");
      return;
    }
    options_.reference_ohm = read_reference(words[++i], mistakes_).value_or(options_.reference_ohm);
  }

  Mistakes& mistakes_;
  Options options_;
  std::array<Span, kinds> seen_ = {};
};

}  // namespace

std::optional<double> read_reference(const Word& word, Mistakes& mistakes) {
  const std::optional<double> value = read_number(word, mistakes);
  if (!value || *value > 0) return value;
  mistakes.add("touchstone-reference", mistakes.span(word),
               "the reference resistance " + quoted(word.text) + " is not above zero", "a resistance in ohm");
  return std::nullopt;
}

Options read_options(const Line& line, Mistakes& mistakes) {
  std::vector<Word> words;
  split(line, words, 1);
  return OptionReader(mistakes).read(words);
}

Header read_version_1(const std::vector<Line>& lines, int ports_hint, Mistakes& mistakes) {
  Header header;
  header.ports = ports_hint;
  bool seen = false;
  for (const Line& line : lines) {
    if (line.text[0] != '#') {
      header.data.push_back(line);
    } else if (seen) {
      header.remarks.push_back(
          {"touchstone-option-ignored", mistakes.span(line), "the first option line counts; this one is ignored"});
    } else if (seen = true; header.data.empty()) {
      header.options = read_options(line, mistakes);
    } else {
      mistakes.add("touchstone-option-late", mistakes.span(line), "the option line stands after data",
                   "the option line before all numbers");
      mistakes.note(mistakes.span(header.data.front()), "the first data");
    }
  }
  return header;
}

}  // namespace wattfall::measured
