// The stages of reading in order: text to lines, lines to header and data, data to records, records to S. Each adds to
// one list of mistakes; the numbers are turned into S only where there are none.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "header.hpp"
#include "records.hpp"

namespace wattfall::measured {
namespace {

/// Nothing that could be a text file of this kind: then one mistake, and no reading.
void check_text(std::string_view text, Mistakes& mistakes) {
  if (text.size() >= std::numeric_limits<std::uint32_t>::max()) {
    mistakes.add("touchstone-too-large", mistakes.start(), "the file is larger than 4 GiB");
  } else if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF") || text.find('\0') != text.npos) {
    mistakes.add("touchstone-not-text", mistakes.start(), "this is not a text of one byte a letter",
                 "plain text (ASCII or UTF-8)");
  }
}

bool has_keywords(const std::vector<Line>& lines) {
  return std::any_of(lines.begin(), lines.end(), [](const Line& line) { return line.text[0] == '['; });
}

/// Version 1: the number of ports from the first record, and whether the name agrees.
void settle_ports(Header& header, Mistakes& mistakes) {
  const auto [values, alike] = first_record(header.data);
  const int found = ports_of_values(values);
  if (header.ports == 0) header.ports = found;
  if (header.ports == 0) {
    mistakes.add("touchstone-ports-unknown", mistakes.span(header.data.front()),
                 "the number of ports cannot be told from " + counted(values, "value") + " a frequency",
                 "3 values for 1 port, 9 for 2 ports, 1 + 2 N^2 for N; or a name that ends in .sNp");
  } else if (alike && found != 0 && found != header.ports) {
    mistakes.add("touchstone-ports-mismatch", mistakes.span(header.data.front()),
                 "the file's name says " + counted(header.ports, "port") + ", the first frequency has " +
                     counted(values, "value") + ", the count for " + counted(found, "port"),
                 counted(1 + 2 * static_cast<std::size_t>(header.ports * header.ports), "value") + " a frequency");
  }
}

void check_kind(const Header& header, Mistakes& mistakes) {
  const auto kind = header.options.immittance;
  if (header.ports == 2 || !kind || *kind == Immittance::impedance || *kind == Immittance::admittance) return;
  mistakes.add("touchstone-two-ports-only", mistakes.span(header.data.front()),
               "G and H parameters are for two ports, and this file has " + std::to_string(header.ports));
}

void check_count(const std::optional<Count>& said, std::size_t found, const char* what, Mistakes& mistakes) {
  if (!said || said->value == found) return;
  mistakes.add(
      "touchstone-frequency-count", said->span,
      "the header says " + std::to_string(said->value) + ", and there are " + std::to_string(found) + " " + what);
}

/// Row-major places of the elements in the order of the file. Lower and upper triangles give each element off the
/// diagonal once.
std::vector<std::size_t> element_order(const Header& header) {
  const auto ports = static_cast<std::size_t>(header.ports);
  std::vector<std::size_t> order;
  for (std::size_t row = 0; row < ports; ++row) {
    const std::size_t begin = header.shape == Shape::upper ? row : 0;
    const std::size_t end = header.shape == Shape::lower ? row + 1 : ports;
    for (std::size_t column = begin; column < end; ++column) order.push_back(row * ports + column);
  }
  if (ports == 2 && header.shape == Shape::full && !header.row_order) std::swap(order[1], order[2]);
  return order;
}

/// Angles are in degrees, decibels 20 lg of the magnitude, in all versions.
Complex from_pair(NumberFormat format, double first, double second) {
  if (format == NumberFormat::real_imaginary) return {first, second};
  const double magnitude = format == NumberFormat::decibel_angle ? std::pow(10.0, first / 20) : first;
  const double angle = second * (std::numbers::pi / 180);
  return {magnitude * std::cos(angle), magnitude * std::sin(angle)};
}

bool finite(Complex value) {
  return std::isfinite(value.real()) && std::isfinite(value.imag());
}

/// Turns records into a network, one frequency after the other.
class NetworkBuilder {
 public:
  NetworkBuilder(const Header& header, const Records& records, Mistakes& mistakes)
      : header_(header), records_(records), mistakes_(mistakes), order_(element_order(header)) {}

  Network build() {
    network_.ports = header_.ports;
    network_.reference_ohm = header_.reference_ohm;
    network_.reference_ohm.resize(header_.ports, header_.options.reference_ohm);
    network_.lines = records_.lines;
    network_.remarks = header_.remarks;
    for (std::size_t index = 0; index < records_.frequencies.size() && !mistakes_.full(); ++index) add_point(index);
    add_noise();
    return std::move(network_);
  }

 private:
  void add_point(std::size_t index) {
    const double frequency = records_.frequencies[index] * header_.options.unit_hz;
    if (!std::isfinite(frequency)) {
      mistakes_.add("touchstone-not-finite", records_.places[index], "this frequency in hertz is beyond all numbers");
    } else if (!network_.frequencies_hz.empty() && frequency <= network_.frequencies_hz.back()) {
      mistakes_.add("touchstone-frequency-order", records_.places[index],
                    "in hertz this frequency is not above the one before it");
    }
    network_.frequencies_hz.push_back(frequency);
    fill_matrix(index);
    if (!to_s()) {
      mistakes_.add("touchstone-no-scattering", records_.places[index],
                    "the values at this frequency have no finite scattering parameters");
    }
    network_.parameters.insert(network_.parameters.end(), matrix_.begin(), matrix_.end());
  }

  void fill_matrix(std::size_t index) {
    const auto ports = static_cast<std::size_t>(header_.ports);
    const double* values = records_.values.data() + index * order_.size() * 2;
    matrix_.assign(ports * ports, Complex());
    for (std::size_t pair = 0; pair < order_.size(); ++pair) {
      const std::size_t place = order_[pair];
      const Complex value = from_pair(header_.options.format, values[2 * pair], values[2 * pair + 1]);
      matrix_[place] = value;
      if (header_.shape != Shape::full) matrix_[place % ports * ports + place / ports] = value;
    }
  }

  /// Version 1 has Z, Y, G and H normalised to R, version 2 in ohm and siemens.
  bool to_s() {
    bool exists = true;
    if (header_.options.immittance) {
      const Immittance kind = *header_.options.immittance;
      exists = header_.version == 1 ? to_scattering_normalised(kind, header_.ports, matrix_.data())
                                    : to_scattering(kind, header_.ports, network_.reference_ohm.data(), matrix_.data());
    }
    return exists && std::all_of(matrix_.begin(), matrix_.end(), finite);
  }

  /// Always magnitude and angle. The resistance is normalised to R in version 1; in version 2 it is taken to be in ohm,
  /// as that version's other values are (from memory, not looked up).
  void add_noise() {
    const double ohm = header_.version == 1 ? header_.options.reference_ohm : 1;
    for (std::size_t i = 0; i + 5 <= records_.noise.size(); i += 5) {
      const double* line = records_.noise.data() + i;
      network_.noise.push_back({line[0] * header_.options.unit_hz, line[1],
                                from_pair(NumberFormat::magnitude_angle, line[2], line[3]), line[4] * ohm});
    }
    if (network_.noise.empty()) return;
    network_.remarks.push_back(
        {"touchstone-noise", records_.first_noise,
         "noise data at " + counted(network_.noise.size(), "frequency point") + " begins here; nothing uses it"});
  }

  const Header& header_;
  const Records& records_;
  Mistakes& mistakes_;
  std::vector<std::size_t> order_;
  std::vector<Complex> matrix_;
  Network network_;
};

Header read_header(std::string_view text, int ports_hint, Mistakes& mistakes) {
  const std::vector<Line> lines = lines_of(text);
  if (has_keywords(lines)) return read_version_2(lines, ports_hint, mistakes);
  Header header = read_version_1(lines, ports_hint, mistakes);
  if (!header.data.empty()) settle_ports(header, mistakes);
  return header;
}

/// False where the header leaves nothing to read: no data, or unknown in its layout.
bool readable(const Header& header, Mistakes& mistakes) {
  if (header.data.empty() && mistakes.none()) {
    mistakes.add("touchstone-empty", mistakes.start(), "there is no network data in this file");
  }
  if (header.data.empty() || header.ports == 0 || mistakes.has("touchstone-ports-mismatch")) return false;
  check_kind(header, mistakes);
  return !mistakes.full();
}

Records read_data(const Header& header, Mistakes& mistakes) {
  const auto ports = static_cast<std::size_t>(header.ports);
  const std::size_t pairs = header.shape == Shape::full ? ports * ports : ports * (ports + 1) / 2;
  const RecordLayout layout = {header.ports, pairs, header.version == 1 && ports == 2};
  Records records = read_records(layout, header.data, header.noise, mistakes);
  if (mistakes.none()) {
    check_count(header.frequencies, records.frequencies.size(), "frequencies", mistakes);
    check_count(header.noise_frequencies, records.noise.size() / 5, "noise frequencies", mistakes);
  }
  return records;
}

Network read_network(std::string_view text, int ports_hint, Mistakes& mistakes) {
  const Header header = read_header(text, ports_hint, mistakes);
  if (!readable(header, mistakes)) return {};
  const Records records = read_data(header, mistakes);
  if (!mistakes.none()) return {};
  return NetworkBuilder(header, records, mistakes).build();
}

}  // namespace

int ports_from_extension(std::string_view path) {
  const std::size_t dot = path.find_last_of("./\\");
  if (dot == path.npos || path[dot] != '.') return 0;
  const std::string extension = lower(path.substr(dot + 1));
  const std::size_t length = extension.size();
  if (length < 3 || length > 5 || extension.front() != 's' || extension.back() != 'p') return 0;
  int ports = 0;
  for (std::size_t i = 1; i + 1 < length; ++i) {
    if (extension[i] < '0' || extension[i] > '9') return 0;
    ports = ports * 10 + (extension[i] - '0');
  }
  return ports;
}

Result<Network> read_touchstone(const SourcePtr& text, int ports_hint) {
  Mistakes mistakes(*text);
  check_text(text->text(), mistakes);
  Network network;
  if (mistakes.none()) network = read_network(text->text(), std::clamp(ports_hint, 0, 999), mistakes);
  if (!mistakes.none()) return {std::nullopt, mistakes.take()};
  network.source = text;
  return {std::move(network), {}};
}

}  // namespace wattfall::measured
