// The keywords of version 2, `[Number of Ports] 2` and the like: which lines are header, network data, noise data or
// free text, and what the header says. Mistakes are collected; only what is clearly meant is kept.
#include <algorithm>
#include <array>
#include <charconv>
#include <string>

#include "grammar/nearest_name.hpp"
#include "header.hpp"

namespace wattfall::measured {
namespace {

enum Keyword {
  version,
  number_of_ports,
  data_order,
  number_of_frequencies,
  number_of_noise_frequencies,
  reference,
  matrix_format,
  mixed_mode_order,
  begin_information,
  end_information,
  network_data,
  noise_data,
  end_of_file,
  keywords
};

struct Spelling {
  const char* name;
  Keyword keyword;
};

// In the order of the enumeration, then other spellings.
const Spelling spellings[] = {
    {"Version", version},
    {"Number of Ports", number_of_ports},
    {"Two-Port Data Order", data_order},
    {"Number of Frequencies", number_of_frequencies},
    {"Number of Noise Frequencies", number_of_noise_frequencies},
    {"Reference", reference},
    {"Matrix Format", matrix_format},
    {"Mixed-Mode Order", mixed_mode_order},
    {"Begin Information", begin_information},
    {"End Information", end_information},
    {"Network Data", network_data},
    {"Noise Data", noise_data},
    {"End", end_of_file},
    {"Two-Port Order", data_order},
};

/// Lower case, runs of blanks and hyphens as one blank.
std::string folded(std::string_view name) {
  std::string result;
  for (const char c : lower(name)) {
    const bool gap = c == ' ' || c == '\t' || c == '-' || c == '_';
    if (!gap) {
      result += c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

std::optional<Keyword> find_keyword(std::string_view name) {
  const std::string wanted = folded(name);
  for (const Spelling& spelling : spellings) {
    if (wanted == folded(spelling.name)) return spelling.keyword;
  }
  return std::nullopt;
}

std::string nearest_keyword(std::string_view name) {
  std::vector<std::string> known;
  for (const Spelling& spelling : spellings) known.emplace_back(spelling.name);
  const std::string nearest = nearest_name(name, known);
  return nearest.empty() ? "" : std::string(1, '[').append(nearest).append("]");
}

std::string bracketed(Keyword keyword) {
  return std::string("[") + spellings[keyword].name + "]";
}

/// Takes the lines of a file one by one; `section_` says what a line without a keyword is.
class KeywordReader {
 public:
  KeywordReader(int ports_hint, Mistakes& mistakes) : hint_(ports_hint), mistakes_(mistakes) { header_.version = 2; }

  Header read(const std::vector<Line>& lines) {
    for (const Line& line : lines) {
      if (section_ == Section::ended || mistakes_.full()) break;
      take(line);
    }
    check_whole();
    return std::move(header_);
  }

 private:
  enum class Section { header, reference, information, network, noise, ended };

  void take(const Line& line) {
    const bool keyword = line.text[0] == '[';
    if (section_ == Section::information) {
      if (keyword && find_keyword(line.text.substr(1, line.text.find(']') - 1)) == end_information) {
        section_ = Section::header;
      }
    } else if (keyword) {
      take_keyword(line);
    } else if (line.text[0] == '#') {
      take_options(line);
    } else {
      take_values(line);
    }
  }

  void take_keyword(const Line& line) {
    const std::size_t close = line.text.find(']');
    if (close == line.text.npos) {
      mistakes_.add("touchstone-open-keyword", mistakes_.span(line), "a keyword without its closing bracket", "]");
      return;
    }
    const Word word = {line.text.substr(0, close + 1), line.begin};
    const std::string_view name = line.text.substr(1, close - 1);
    const std::optional<Keyword> keyword = find_keyword(name);
    if (!keyword) {
      mistakes_.add("touchstone-unknown-keyword", mistakes_.span(word), quoted(word.text) + " is not a keyword",
                    "a keyword of version 2", nearest_keyword(name));
      return;
    }
    split(line, words_, close + 1);
    if (in_order(*keyword, word)) obey(*keyword, word);
  }

  bool in_order(Keyword keyword, const Word& word) {
    if (seen_[version].source == nullptr && keyword != version && !version_missed_) {
      mistakes_.add("touchstone-version", mistakes_.span(word),
                    "a keyword in a file that does not begin with [Version]", "[Version] 2.0 on the first line");
      version_missed_ = true;
    }
    if (seen_[keyword].source != nullptr && seen_[keyword].begin != word.begin) {
      mistakes_.add("touchstone-keyword-twice", mistakes_.span(word), "a second " + bracketed(keyword));
      mistakes_.note(seen_[keyword], "the first");
      return false;
    }
    seen_[keyword] = mistakes_.span(word);
    if (seen_[network_data].source == nullptr || keyword >= network_data) return true;
    mistakes_.add("touchstone-keyword-order", mistakes_.span(word),
                  bracketed(keyword) + " stands after the network data", bracketed(keyword) + " before [Network Data]");
    return false;
  }

  void obey(Keyword keyword, const Word& word) {
    section_ = Section::header;
    switch (keyword) {
      case version:
        return take_version(word);
      case number_of_ports:
        return take_ports(word);
      case data_order:
        return take_order(word);
      case number_of_frequencies:
        return take_count(word, header_.frequencies);
      case number_of_noise_frequencies:
        return take_count(word, header_.noise_frequencies);
      case reference:
        section_ = Section::reference;
        references_given_ = true;
        return take_references();
      case matrix_format:
        return take_shape(word);
      case mixed_mode_order:
        mistakes_.add("touchstone-mixed-mode", mistakes_.span(word), "mixed-mode parameters are not supported",
                      "single-ended ports");
        section_ = Section::information;  // what follows belongs to it; nothing is read from such a file
        return;
      case begin_information:
        section_ = Section::information;
        return;
      case network_data:
        return enter(Section::network, word);
      case noise_data:
        return enter(Section::noise, word);
      case end_of_file:
        return enter(Section::ended, word);
      default:
        return;
    }
  }

  /// A keyword that stands alone on its line.
  void enter(Section section, const Word& keyword) {
    section_ = section;
    if (words_.empty()) return;
    mistakes_.add("touchstone-stray-words", mistakes_.span(words_.front(), words_.back()),
                  "these words stand after " + std::string(keyword.text) + " on its line", "a line of their own");
  }

  /// The one word after a keyword; null, and a mistake, where there is none.
  const Word* value(const Word& keyword, const char* expected) {
    if (words_.size() == 1) return &words_[0];
    if (words_.empty()) {
      refuse(keyword, std::string(keyword.text) + " without its value", expected);
    } else {
      refuse(words_[1], "more than one value after " + std::string(keyword.text), expected);
    }
    return nullptr;
  }

  void refuse(const Word& word, std::string text, const char* expected) {
    mistakes_.add("touchstone-keyword-value", mistakes_.span(word), std::move(text), expected);
  }

  void take_version(const Word& keyword) {
    const Word* word = value(keyword, "2.0 or 2.1");
    if (word == nullptr || word->text == "2.0" || word->text == "2.1") return;
    mistakes_.add("touchstone-version", mistakes_.span(*word), "version " + quoted(word->text) + " is not known",
                  "2.0 or 2.1");
  }

  std::optional<std::size_t> whole_number(const Word& keyword, std::size_t least, std::size_t most) {
    const Word* word = value(keyword, "a whole number");
    if (word == nullptr) return std::nullopt;
    std::size_t number = 0;
    const char* end = word->text.data() + word->text.size();
    const auto [stop, error] = std::from_chars(word->text.data(), end, number);
    if (error == std::errc{} && stop == end && number >= least && number <= most) return number;
    refuse(*word, quoted(word->text) + " is not a whole number that can stand here",
           most < 1000 ? "a whole number from 1 to 999" : "a whole number");
    return std::nullopt;
  }

  void take_ports(const Word& keyword) {
    const std::optional<std::size_t> number = whole_number(keyword, 1, 999);
    if (!number) return;
    header_.ports = static_cast<int>(*number);
    if (hint_ == 0 || hint_ == header_.ports) return;
    mistakes_.add("touchstone-ports-mismatch", mistakes_.span(words_[0]),
                  "the file's name says " + counted(hint_, "port") + ", the file " + std::to_string(*number));
  }

  void take_order(const Word& keyword) {
    const Word* word = value(keyword, "12_21 or 21_12");
    if (word == nullptr) return;
    header_.row_order = word->text == "12_21";
    if (!header_.row_order && word->text != "21_12") {
      refuse(*word, quoted(word->text) + " is not an order of two-port data", "12_21 or 21_12");
    }
  }

  void take_count(const Word& keyword, std::optional<Count>& count) {
    const std::optional<std::size_t> number = whole_number(keyword, 1, 1000000000);
    if (number) count = Count{*number, mistakes_.span(words_[0])};
  }

  void take_shape(const Word& keyword) {
    const Word* word = value(keyword, "Full, Lower or Upper");
    if (word == nullptr) return;
    const std::string name = lower(word->text);
    header_.shape = name == "lower" ? Shape::lower : name == "upper" ? Shape::upper : Shape::full;
    if (header_.shape == Shape::full && name != "full") {
      refuse(*word, quoted(word->text) + " is not a matrix format", "Full, Lower or Upper");
    }
  }

  void take_references() {
    for (const Word& word : words_) {
      references_seen_ += 1;
      last_reference_ = mistakes_.span(word);
      const std::optional<double> value = read_reference(word, mistakes_);
      if (value) header_.reference_ohm.push_back(*value);
    }
  }

  void take_options(const Line& line) {
    if (options_seen_) {
      header_.remarks.push_back(
          {"touchstone-option-ignored", mistakes_.span(line), "the first option line counts; this one is ignored"});
    } else if (seen_[network_data].source != nullptr) {
      mistakes_.add("touchstone-option-late", mistakes_.span(line), "the option line stands after [Network Data]",
                    "the option line before all numbers");
    } else {
      header_.options = read_options(line, mistakes_);
      section_ = Section::header;
    }
    options_seen_ = true;
  }

  void take_values(const Line& line) {
    if (section_ == Section::network) {
      header_.data.push_back(line);
    } else if (section_ == Section::noise) {
      header_.noise.push_back(line);
    } else if (section_ == Section::reference) {
      split(line, words_);
      take_references();
    } else {
      mistakes_.add("touchstone-stray-words", mistakes_.span(line), "this line belongs to no keyword",
                    "[Network Data] before the numbers, ! before a comment");
    }
  }

  void need(Keyword keyword) {
    if (seen_[keyword].source != nullptr) return;
    mistakes_.add("touchstone-keyword-missing", mistakes_.start(),
                  "there is no " + bracketed(keyword) + " in this file", bracketed(keyword));
  }

  void check_references() {
    if (!references_given_ || references_seen_ == static_cast<std::size_t>(header_.ports)) return;
    mistakes_.add("touchstone-reference", join(seen_[reference], last_reference_),
                  "[Reference] has " + counted(references_seen_, "value") + ", and there are " +
                      counted(static_cast<std::size_t>(header_.ports), "port"),
                  "one resistance for each port");
  }

  void check_whole() {
    if (mistakes_.full() || seen_[mixed_mode_order].source != nullptr) return;
    need(number_of_ports);
    need(number_of_frequencies);
    need(network_data);
    if (header_.ports == 2) need(data_order);
    if (header_.ports > 0) check_references();
    if (section_ == Section::information) {
      mistakes_.add("touchstone-keyword-missing", seen_[begin_information], "[Begin Information] without its end",
                    "[End Information]");
    } else if (section_ != Section::ended) {
      header_.remarks.push_back(
          {"touchstone-no-end", mistakes_.start(), "the file has no [End]: it may have been cut"});
    }
  }

  int hint_;
  Mistakes& mistakes_;
  Header header_;
  Section section_ = Section::header;
  std::array<Span, keywords> seen_ = {};
  bool version_missed_ = false;
  bool options_seen_ = false;
  bool references_given_ = false;
  std::size_t references_seen_ = 0;
  Span last_reference_;
  std::vector<Word> words_;
};

}  // namespace

Header read_version_2(const std::vector<Line>& lines, int ports_hint, Mistakes& mistakes) {
  return KeywordReader(ports_hint, mistakes).read(lines);
}

}  // namespace wattfall::measured
