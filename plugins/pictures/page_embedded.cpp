// The document inside the page. A page is to stay small enough to mail, so numbers are rounded to ten digits (5e-10),
// and of a long sweep every so many points are kept, with those that the reports dwell on among them.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <set>

#include "page_sections.hpp"

namespace pictures {
namespace {

constexpr std::size_t short_sweep = 64, least_points = 16;

/// Texts inside <script>: nothing of HTML may be seen in them.
void write_string(std::string& out, const std::string& text) {
  for (const char c : Json(text).dump(-1, ' ', true, Json::error_handler_t::replace)) {
    if (c == '<')
      out += "\\u003c";
    else if (c == '>')
      out += "\\u003e";
    else if (c == '&')
      out += "\\u0026";
    else
      out += c;
  }
}

void write_number(std::string& out, double value) {
  if (!std::isfinite(value)) {
    out += "null";
    return;
  }
  std::array<char, 40> text;
  const auto done = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, 10);
  out.append(text.data(), done.ptr);
}

class Embedder {
 public:
  /// Of each long sweep about this share of its points.
  Embedder(const Json& document, double share) : document_(document) {
    for (const Json& variant : reports::list(document, "variants")) kept_.push_back(choose(variant, share));
  }

  std::string make() {
    write(document_, nullptr);
    return std::move(out_);
  }

 private:
  /// Indices of the points kept; empty where all are.
  static std::vector<std::size_t> choose(const Json& variant, double share) {
    const std::size_t points = reports::list(variant, "frequencies_hz").size();
    if (share >= 1.0 || points <= short_sweep) return {};
    const auto room = std::max(least_points, static_cast<std::size_t>(share * static_cast<double>(points)));
    std::set<std::size_t> kept;
    for (std::size_t k = 0; k < room; ++k) kept.insert(k * (points - 1) / (room - 1));
    const Json& moments = reports::member(variant, "moments");
    for (const Json& shown : reports::list(moments, "shown"))
      if (shown.is_number_unsigned() && shown.get<std::size_t>() < points) kept.insert(shown.get<std::size_t>());
    for (const char* key : {"worst", "best", "middle"}) kept.insert(std::min(reports::count(moments, key), points - 1));
    return {kept.begin(), kept.end()};
  }

  void write_variants(const Json& variants) {
    out_ += '[';
    for (std::size_t v = 0; v < variants.size(); ++v) {
      if (v > 0) out_ += ',';
      points_ = reports::list(variants[v], "frequencies_hz").size();
      write(variants[v], kept_[v].empty() ? nullptr : &kept_[v]);
    }
    out_ += ']';
  }

  void write_list(const Json& list, const std::vector<std::size_t>* kept) {
    out_ += '[';
    if (kept != nullptr && list.size() == points_) {
      for (std::size_t k = 0; k < kept->size(); ++k) {
        if (k > 0) out_ += ',';
        write(list[(*kept)[k]], nullptr);
      }
    } else {
      for (std::size_t i = 0; i < list.size(); ++i) {
        if (i > 0) out_ += ',';
        write(list[i], kept);
      }
    }
    out_ += ']';
  }

  void write_object(const Json& object, const std::vector<std::size_t>* kept) {
    out_ += '{';
    bool first = true;
    for (const auto& [key, value] : object.items()) {
      if (!first) out_ += ',';
      first = false;
      write_string(out_, key);
      out_ += ':';
      const bool whole =
          key == "along" || key == "nodes" || key == "tuning" || key == "moments" || key.starts_with("choice");
      const bool setting_of_selector = key == "choice";
      if (key == "variants" && &object == &document_)
        write_variants(value);
      else
        write(value, whole && !setting_of_selector ? nullptr : kept);
    }
    if (kept != nullptr && object.contains("frequencies_hz")) {
      out_ += ",\"thinned\":[";
      for (std::size_t k = 0; k < kept->size(); ++k) out_ += (k > 0 ? "," : "") + std::to_string((*kept)[k]);
      out_ += ']';
    }
    out_ += '}';
  }

  void write(const Json& value, const std::vector<std::size_t>* kept) {
    if (value.is_array())
      write_list(value, kept);
    else if (value.is_object())
      write_object(value, kept);
    else if (value.is_string())
      write_string(out_, value.get_ref<const std::string&>());
    else if (value.is_number_float())
      write_number(out_, value.get<double>());
    else
      out_ += value.dump();
  }

  const Json& document_;
  std::vector<std::vector<std::size_t>> kept_;
  std::size_t points_ = 0;
  std::string out_;
};

}  // namespace

std::string embedded(const Json& document, std::size_t most_bytes) {
  double share = 1.0;
  std::string made;
  for (int attempt = 0; attempt < 4; ++attempt) {
    made = Embedder(document, share).make();
    if (made.size() <= most_bytes) break;
    share *= 0.93 * static_cast<double>(most_bytes) / static_cast<double>(made.size());
  }
  return made;
}

}  // namespace pictures
