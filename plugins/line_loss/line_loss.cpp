// The default line-loss model, "skin-dielectric": matched loss k1 sqrt(f) + k2 f [dB/m, f in Hz], the first term from
// the skin effect of the conductors and the second from the dielectric; and the table of generic cables. README.md has
// equations and sources.
#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <stdexcept>
#include <vector>

#include "cable_table.hpp"
#include "least_squares.hpp"
#include "wattfall/sdk.hpp"

namespace sdk = wattfall::sdk;

namespace line_loss {
namespace {

constexpr double light_m_per_s = 299792458.0;  // exact, SI
constexpr double pi = 3.14159265358979323846;
constexpr double neper_per_db = 2.30258509299404568402 / 20.0;  // ln(10)/20

struct Coefficients {
  double k1 = 0.0;  // [dB/m/sqrt(Hz)]
  double k2 = 0.0;  // [dB/m/Hz]

  double db_per_m(double frequency_hz) const { return k1 * std::sqrt(frequency_hz) + k2 * frequency_hz; }
};

void require(bool holds, const char* otherwise) {
  if (!holds) throw std::invalid_argument(otherwise);
}

void check_losses(std::span<const sdk::LossPoint> losses) {
  double last_hz = 0.0;
  for (const auto& point : losses) {
    require(std::isfinite(point.frequency_hz) && point.frequency_hz > 0.0,
            "a loss is given at a frequency that is not positive");
    require(point.frequency_hz > last_hz, "losses must be given at rising frequencies");
    require(std::isfinite(point.db_per_100m) && point.db_per_100m >= 0.0, "a loss is negative");
    require(point.db_per_100m > 0.0 || losses.size() == 1,
            "a loss of zero among others has no relative error to fit to");
    last_hz = point.frequency_hz;
  }
}

/// sqrt(x) and x over the measured loss, so that a fit without error gives 1 at each point. `scale_hz` keeps both near
/// one.
std::array<Column, 2> relative_columns(std::span<const sdk::LossPoint> losses, double scale_hz) {
  std::array<Column, 2> columns;
  for (const auto& point : losses) {
    const double x = point.frequency_hz / scale_hz;
    columns[0].push_back(std::sqrt(x) / (point.db_per_100m / 100.0));
    columns[1].push_back(x / (point.db_per_100m / 100.0));
  }
  return columns;
}

Coefficients coefficients(std::span<const sdk::LossPoint> losses) {
  if (losses.empty()) return {};
  if (losses.size() == 1) return {losses[0].db_per_100m / 100.0 / std::sqrt(losses[0].frequency_hz), 0.0};
  const double scale_hz = losses.back().frequency_hz;
  const std::vector<double> scaled = non_negative_least_squares(relative_columns(losses, scale_hz));
  return {scaled[0] / std::sqrt(scale_hz), scaled[1] / scale_hz};
}

double worst_relative_error(std::span<const sdk::LossPoint> losses, Coefficients k) {
  double worst = 0.0;
  for (const auto& point : losses) {
    const double given = point.db_per_100m / 100.0;
    if (given > 0.0) worst = std::max(worst, std::abs(k.db_per_m(point.frequency_hz) / given - 1.0));
  }
  return worst;
}

std::span<const sdk::LossPoint> losses_of(const sdk::LineData& line) {
  require(line.losses != nullptr || line.loss_count == 0, "the line's losses are null");
  return {line.losses, line.loss_count};
}

sdk::Status fit(void*, const sdk::LineData* line, double* k1, double* k2, double* worst, sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    const auto losses = losses_of(*line);
    check_losses(losses);
    const Coefficients k = coefficients(losses);
    *k1 = k.k1;
    *k2 = k.k2;
    if (worst != nullptr) *worst = worst_relative_error(losses, k);
  });
}

void check_line(const sdk::LineData& line, Coefficients k) {
  require(std::isfinite(line.velocity) && line.velocity > 0.0 && line.velocity <= 1.0,
          "a line's velocity lies above 0 and at most at 1");
  require(std::isfinite(line.impedance_ohm.re) && std::isfinite(line.impedance_ohm.im) && line.impedance_ohm.re > 0.0,
          "a line's impedance has a positive real part");
  require(std::isfinite(k.k1) && std::isfinite(k.k2) && k.k1 >= 0.0 && k.k2 >= 0.0,
          "a line's loss coefficients are not negative");
}

sdk::Status propagate(void*, const sdk::LineData* line, double k1, double k2, const double* frequencies_hz,
                      std::size_t points, sdk::Complex* gamma_per_m, sdk::Complex* impedance_ohm,
                      sdk::Failure* failure) {
  return sdk::guarded(failure, [&] {
    const Coefficients k{k1, k2};
    check_line(*line, k);
    const double radians_per_m_hz = 2.0 * pi / (line->velocity * light_m_per_s);
    for (std::size_t i = 0; i < points; ++i) {
      require(std::isfinite(frequencies_hz[i]) && frequencies_hz[i] > 0.0, "a frequency is not positive");
      gamma_per_m[i] = {neper_per_db * k.db_per_m(frequencies_hz[i]), radians_per_m_hz * frequencies_hz[i]};
      impedance_ohm[i] = line->impedance_ohm;
    }
  });
}

constexpr sdk::LineModel model{"skin-dielectric", "matched loss k1 sqrt(f) + k2 f; impedance as given", nullptr, fit,
                               propagate};

sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
  if (host->add_line_model(host, &model, failure) != sdk::Status::ok) return sdk::Status::failed;
  for (const sdk::Cable& cable : cable_table()) {
    if (host->add_cable(host, &cable, failure) != sdk::Status::ok) return sdk::Status::failed;
  }
  return sdk::Status::ok;
}

constexpr sdk::Plugin plugin = sdk::describe("line-loss", "1.0", enroll);

}  // namespace
}  // namespace line_loss

WATTFALL_PLUGIN(line_loss::plugin)
