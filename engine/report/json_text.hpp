// Writes JSON into one string as it goes, without a tree in between: a long sweep has millions of numbers. The caller
// opens and closes brackets; commas, line ends, indentation and escapes are looked after here.
#pragma once

#include <complex>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace wattfall::report {

class JsonText {
 public:
  /// How a bracket's members are set: each on a line of its own, as many as a line takes, or all on one line.
  enum class Layout { lines, filled, one_line };

  /// `bytes` are set aside at once.
  explicit JsonText(std::size_t bytes = 0) { text_.reserve(bytes); }

  void open(char bracket, Layout layout = Layout::lines);
  void close();
  void key(std::string_view name);

  void null();
  void value(std::string_view text);
  void value(double number);
  void value(std::complex<double> number);
  void value(std::span<const double> numbers) { items(numbers); }
  void value(std::span<const std::complex<double>> numbers) { items(numbers); }
  void value(const std::vector<std::string>& texts) { items(std::span(texts)); }
  void value(const std::vector<bool>& flags);
  void value(std::same_as<bool> auto flag) { word(flag ? "true" : "false"); }
  void value(std::integral auto number) requires(!std::same_as<decltype(number), bool>) {
    word(std::to_string(number));
  }
  void value(const std::vector<std::size_t>& numbers) { items(std::span(numbers)); }

  template <class Thing>
  void field(std::string_view name, const Thing& thing) {
    key(name);
    value(thing);
  }

  /// Sentences, each on a line of its own.
  void sentences(std::string_view name, const std::vector<std::string>& all);

  /// The text with a final line end; this object is empty afterwards.
  std::string take();

 private:
  struct Level {
    char closing;
    Layout layout;
    std::size_t members = 0;
  };

  void begin_value();
  void separate();
  void new_line();
  void word(std::string_view text);
  void append_number(double number);
  void append_string(std::string_view text);

  template <class Item>
  void items(std::span<const Item> all);

  std::string text_;
  std::vector<Level> levels_;
  bool after_key_ = false;
};

/// A number in the shortest digits that read back the same; whole numbers below 1e15 without an exponent. Appends.
void append_shortest(std::string& text, double number);

}  // namespace wattfall::report
