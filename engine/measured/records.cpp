// From data lines to records. The counts of values decide: an odd one has a frequency in it, an even one only pairs, so
// a lost value shows on the line where it is lost.
#include "records.hpp"

#include <algorithm>
#include <limits>
#include <string>

namespace wattfall::measured {
namespace {

constexpr std::size_t noise_values = 5;       // frequency, figure, magnitude, angle, resistance
constexpr std::size_t most_pairs_a_line = 4;  // Touchstone 1.1

class RecordReader {
 public:
  RecordReader(const RecordLayout& layout, Mistakes& mistakes)
      : layout_(layout), mistakes_(mistakes), needed_(1 + 2 * layout.pairs) {
    const std::size_t row = std::min(static_cast<std::size_t>(layout.ports), most_pairs_a_line);
    usual_first_ = layout.ports <= 2 ? needed_ : 1 + 2 * row;
  }

  Records read(const std::vector<Line>& data, const std::vector<Line>& noise) {
    for (const Line& line : data) {
      if (mistakes_.full()) return std::move(records_);
      take(line);
    }
    if (state_ == State::open) close_short();
    for (const Line& line : noise) {
      if (mistakes_.full()) break;
      split(line, words_);
      take_noise();
    }
    return std::move(records_);
  }

 private:
  enum class State { between, open, skipping, noise };

  void take(const Line& line) {
    split(line, words_);
    if (state_ == State::open && begins_record()) close_short();
    if (state_ == State::skipping && begins_record()) state_ = State::between;
    if (state_ == State::between && begins_noise()) state_ = State::noise;
    if (state_ == State::noise) return take_noise();
    if (state_ == State::skipping) return;
    if (state_ == State::between) begin(line);
    append();
  }

  bool begins_record() const {
    const std::size_t count = words_.size();
    return count == usual_first_ || (count == first_of_file_ && count % 2 == 1);
  }

  bool begins_noise() const {
    if (!layout_.noise_follows || words_.size() != noise_values || records_.frequencies.empty()) return false;
    Mistakes unheard(*mistakes_.start().source);
    const std::optional<double> frequency = read_number(words_[0], unheard);
    return frequency && *frequency <= records_.frequencies.back();
  }

  void begin(const Line& line) {
    state_ = State::open;
    line_ = line.number;
    record_ = {};
    first_word_ = words_.front();
    first_last_ = words_.back();
    if (first_of_file_ == 0) first_of_file_ = words_.size();
  }

  void append() {
    const bool first = record_.empty();
    const std::size_t room = needed_ - record_.size();
    if (words_.size() > room) return refuse_extra(room);
    if (first && words_.size() % 2 == 0) return refuse_short(words_.size());
    if (!first && words_.size() % 2 == 1) return refuse_odd();
    for (const Word& word : words_) {
      record_.push_back(read_number(word, mistakes_).value_or(std::numeric_limits<double>::quiet_NaN()));
    }
    if (record_.size() == needed_) complete();
  }

  void complete() {
    state_ = State::between;
    check_frequency(records_.frequencies, records_.places);
    records_.frequencies.push_back(record_[0]);
    records_.places.push_back(mistakes_.span(first_word_));
    records_.lines.push_back(line_);
    records_.values.insert(records_.values.end(), record_.begin() + 1, record_.end());
  }

  void check_frequency(const std::vector<double>& before, const std::vector<Span>& places) {
    const Span place = mistakes_.span(first_word_);
    if (record_[0] < 0) {
      mistakes_.add("touchstone-negative-frequency", place,
                    "the frequency " + quoted(first_word_.text) + " is negative", "a frequency of 0 or more");
    } else if (!before.empty() && record_[0] <= before.back()) {
      mistakes_.add("touchstone-frequency-order", place,
                    "the frequency " + quoted(first_word_.text) + " is not above the one before it",
                    "frequencies that rise from line to line");
      mistakes_.note(places.back(), "the one before");
    }
  }

  void close_short() { refuse_short(record_.size()); }

  void refuse_short(std::size_t count) {
    mistakes_.add("touchstone-missing-values", mistakes_.span(first_word_, first_last_),
                  "this frequency has " + std::to_string(count) + " of its " + std::to_string(needed_) + " values",
                  expected());
    state_ = State::skipping;
  }

  void refuse_odd() {
    mistakes_.add("touchstone-odd-values", mistakes_.span(words_.front(), words_.back()),
                  "a line that goes on a frequency has " + counted(words_.size(), "value"), "pairs of values");
    mistakes_.note(mistakes_.span(first_word_), "the frequency");
    state_ = State::skipping;
  }

  void refuse_extra(std::size_t room) {
    const std::size_t extra = words_.size() - room;
    mistakes_.add("touchstone-extra-values", mistakes_.span(words_[room], words_.back()),
                  counted(extra, "value") + " more than the " + std::to_string(needed_) + " of this frequency",
                  expected());
    state_ = State::skipping;
  }

  std::string expected() const {
    return "a frequency and " + counted(layout_.pairs, "pair") + " (" + counted(layout_.ports, "port") + ")";
  }

  void take_noise() {
    first_word_ = words_.front();
    if (words_.size() != noise_values) {
      mistakes_.add("touchstone-noise-values", mistakes_.span(words_.front(), words_.back()),
                    "a line of noise data has " + counted(words_.size(), "value"),
                    "5 values: frequency, figure, magnitude, angle, resistance");
      return;
    }
    record_.clear();
    for (const Word& word : words_) {
      record_.push_back(read_number(word, mistakes_).value_or(std::numeric_limits<double>::quiet_NaN()));
    }
    check_frequency(noise_frequencies_, noise_places_);
    noise_frequencies_.push_back(record_[0]);
    noise_places_.push_back(mistakes_.span(first_word_));
    if (records_.first_noise.source == nullptr) records_.first_noise = mistakes_.span(first_word_, words_.back());
    records_.noise.insert(records_.noise.end(), record_.begin(), record_.end());
  }

  const RecordLayout& layout_;
  Mistakes& mistakes_;
  std::size_t needed_;
  std::size_t usual_first_;        // values on the first line of a record, by the standard
  std::size_t first_of_file_ = 0;  // and as this file has it
  State state_ = State::between;
  int line_ = 0;
  Word first_word_, first_last_;  // the first line of the record in hand
  std::vector<double> record_;
  std::vector<Word> words_;
  std::vector<double> noise_frequencies_;
  std::vector<Span> noise_places_;
  Records records_;
};

}  // namespace

Records read_records(const RecordLayout& layout, const std::vector<Line>& data, const std::vector<Line>& noise,
                     Mistakes& mistakes) {
  return RecordReader(layout, mistakes).read(data, noise);
}

FirstRecord first_record(const std::vector<Line>& data) {
  std::vector<Word> words;
  FirstRecord record;
  std::size_t first = 0;
  for (const Line& line : data) {
    split(line, words);
    if (record.values > 0 && words.size() % 2 == 1) {
      record.alike = words.size() == first;
      break;
    }
    if (record.values == 0) first = words.size();
    record.values += words.size();
  }
  return record;
}

int ports_of_values(std::size_t values) {
  for (int ports = 1; ports < 1000; ++ports) {
    const std::size_t wanted = 1 + 2 * static_cast<std::size_t>(ports) * static_cast<std::size_t>(ports);
    if (wanted >= values) return wanted == values ? ports : 0;
  }
  return 0;
}

}  // namespace wattfall::measured
