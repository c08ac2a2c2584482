// All that a plugin sees of wattfall. A plugin is a shared library that exports one C function, `wattfall_plugin`, which returns
// a description of itself; the host checks the interface number and the compiler family, then calls `enroll`, in which the plugin
// registers part kinds, cables, line-loss models, optimizers, forms of tuners and report writers.
//
// Rules of the border: only plain structs and function pointers cross it; no exception does, in either direction (wrap your code in
// `guarded`); every pointer that a plugin hands over must stay valid until the library is closed; calls may come from several
// threads at once. Numbers are SI: hertz, ohms, metres, nepers and radians a metre. Phasors are rms, time runs as e^(+j w t).
// New fields go to the ends of structs, with a new interface number.
//
// A smallest plugin:
//
//     #include <wattfall/sdk.hpp>
//     namespace sdk = wattfall::sdk;
//     static sdk::Status enroll(const sdk::Registrar* host, sdk::Failure* failure) {
//       return sdk::guarded(failure, [&] { host->add_cable(host, &my_cable, failure); });
//     }
//     static const sdk::Plugin plugin = sdk::describe("my-cables", "1.0", enroll);
//     WATTFALL_PLUGIN(plugin)
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <exception>

namespace wattfall::sdk {

/// Raised with every change that an older plugin or host could not follow.
inline constexpr std::uint32_t interface_number = 2;

/// The compiler family a plugin was built by: the C++ run-time libraries of different families do not mix safely.
inline constexpr const char* compiler_family =
#if defined(_MSC_VER)
    "msvc";
#else
    "itanium-c++-abi";
#endif

enum class Status : std::int32_t { ok = 0, failed = 1 };

/// Where the side that failed says why, in a sentence without a final newline. Always ends in a zero byte.
struct Failure {
  char text[512];
};

/// Copies `text` (cut to what fits) into `failure` and returns Status::failed.
inline Status fail(Failure* failure, const char* text) noexcept {
  if (failure != nullptr) {
    std::strncpy(failure->text, text, sizeof failure->text - 1);
    failure->text[sizeof failure->text - 1] = '\0';
  }
  return Status::failed;
}

/// Runs `body` and turns an exception into a status and a text. `body` returns Status or nothing.
template <class Body>
Status guarded(Failure* failure, Body&& body) noexcept {
  try {
    if constexpr (requires { Status(body()); }) {
      return body();
    } else {
      body();
      return Status::ok;
    }
  } catch (const std::exception& error) {
    return fail(failure, error.what());
  } catch (...) {
    return fail(failure, "an exception that is no std::exception");
  }
}

/// [re, im].
struct Complex {
  double re;
  double im;
};

// ---- part kinds -------------------------------------------------------------------------------------------------

/// A property that a kind takes. The first of a kind is its main value, and may stand without its name.
struct Property {
  const char* name;     ///< as users write it: "resistance"
  const char* unit;     ///< its SI unit, which fixes the dimension: "ohm", "F", "Hz", "m", "" for a plain number
  const char* fallback; ///< its value where it is not given, in the language ("50 ohm"); null: it must be given
  const char* meaning;  ///< one line for `list kinds`
};

/// A kind of part: a linear network of one or two ports that obeys A V + B I = 0 at each frequency, where V are the rms volts across
/// its ports and I the rms amps into their first terminals. The form holds shorts (A = 0) and opens (B = 0) alike; scale
/// each row so that its largest entry, with B in units of 1/ohm-normalised amps (B entries divided by 50 ohm), is near one.
struct Kind {
  const char* name;
  const char* meaning;
  std::uint32_t ports;  ///< 1: `at n` or `from a to b`; 2: `from in to out`, both against ground or in bracketed pairs
  const Property* properties;
  std::size_t property_count;
  void* self;  ///< handed back in every call
  /// Fills a and b, each points x ports x ports, row-major, for the given property values (property_count of them).
  Status (*rows)(void* self, const Complex* values, const double* frequencies_hz, std::size_t points, Complex* a, Complex* b,
                 Failure* failure);
};

// ---- cables and line-loss models --------------------------------------------------------------------------------

struct LossPoint {
  double frequency_hz;
  double db_per_100m;
};

/// A cable by its trade's generic name. Figures are typical unless `origin` says otherwise.
struct Cable {
  const char* name;
  double impedance_ohm;
  double velocity;        ///< of light's: 0.66
  const LossPoint* losses;  ///< matched loss, rising in frequency; none: lossless
  std::size_t loss_count;
  double limit_volts_peak;  ///< rating, 0 where not known
  const char* meaning;      ///< one line: what it is
  const char* origin;       ///< where the figures come from
  double limit_watts_per_m = 0.0;  ///< most heat that a metre may make where it is worst, 0 where not known (interface 2)
};

/// What a line is made of, as far as loss goes.
struct LineData {
  Complex impedance_ohm;  ///< nominal Z0
  double velocity;
  const LossPoint* losses;
  std::size_t loss_count;
};

/// How loss grows with frequency between and beyond the points given.
struct LineModel {
  const char* name;
  const char* meaning;
  void* self;
  /// Two coefficients of matched loss: alpha_dB_per_m(f) = k1 sqrt(f) + k2 f, f in hertz; or others that `propagate` understands.
  Status (*fit)(void* self, const LineData* line, double* k1, double* k2, double* worst_relative_error, Failure* failure);
  /// For each frequency: gamma = alpha + j beta [Np/m, rad/m] and Z0 [ohm].
  Status (*propagate)(void* self, const LineData* line, double k1, double k2, const double* frequencies_hz, std::size_t points,
                      Complex* gamma_per_m, Complex* impedance_ohm, Failure* failure);
};

// ---- optimizers -------------------------------------------------------------------------------------------------

/// A knob: continuous between lower and upper, or one of `choices` (then its value is the choice's number from 0).
struct KnobRange {
  double lower;
  double upper;
  double start;               ///< where the design has it now
  std::uint32_t logarithmic;  ///< 1: equal ratios matter (coils, capacitors), 0: equal steps (lengths)
  const double* choices;      ///< null for a continuous knob
  std::size_t choice_count;
};

/// A search for the greatest `goal` with every slack >= 0.
struct SearchProblem {
  const KnobRange* knobs;
  std::size_t knob_count;
  std::size_t slack_count;
  /// Settings worth trying first (from closed forms, from the neighbour in frequency), start_count x knob_count.
  const double* starts;
  std::size_t start_count;
  void* self;
  /// settings: count x knob_count. Fills goals[count] and slacks[count x slack_count]. A goal that does not exist is -infinity. Cheap in batches.
  Status (*evaluate)(void* self, const double* settings, std::size_t count, double* goals, double* slacks, Failure* failure);
};

struct SearchResult {
  double* setting;  ///< knob_count, filled by the optimizer
  double goal;
  std::uint64_t evaluations;
  std::uint32_t feasible;  ///< 1 where every slack is >= 0 at `setting`
  std::uint32_t exhaustive;  ///< 1 where every setting there is was tried, so that none can do better; an optimizer may leave it
  /// Room for `other_room` more settings (other_room x knob_count); 0: they are not wanted. An optimizer that knows other distinct local bests which
  /// keep every slack writes them there, best first, `setting` itself not among them, and their number to `other_count`; it may leave both alone.
  double* others;
  std::size_t other_room;
  std::size_t other_count;
};

struct Optimizer {
  const char* name;
  const char* meaning;
  void* self;
  Status (*search)(void* self, const SearchProblem* problem, SearchResult* result, Failure* failure);
};

// ---- forms of tuners ---------------------------------------------------------------------------------------------

/// A way to build a tuner, written in the feed language. `tuner NAME from a to b : GROUP` (or `any`) tries all forms of the group (or all there are), each as a
/// design of its own; `tuner NAME from a to b : "FORM"` takes the one.
struct TunerForm {
  const char* name;     ///< tells it from the others: "low-pass L, C at the rig"
  const char* group;    ///< a word, hyphens allowed: "l-network"
  const char* meaning;  ///< one line: what it is
  /// One `box` of two ports, the source's side first. What is `adjustable` in it is turned by `tune NAME`. Its `with` quantities are the tuner's
  /// properties, `_` written as a blank: `coil_Q` is given by `coil Q 200`.
  const char* box;
};

// ---- report writers ---------------------------------------------------------------------------------------------

/// Takes a piece of output; failed means stop writing.
struct Sink {
  void* self;
  Status (*write)(void* self, const char* bytes, std::size_t size);
};

struct WriterOptions {
  std::uint32_t columns;  ///< width to fill at most: 100
  std::uint32_t color;    ///< 1: ANSI colours are wanted
};

/// Turns the result document (JSON, schema 1, UTF-8) into a report. A writer computes nothing that the document does not say.
struct Writer {
  const char* name;
  const char* meaning;
  const char* extension;  ///< of a file it writes: "txt"
  void* self;
  Status (*write)(void* self, const char* document, std::size_t size, const WriterOptions* options, const Sink* sink,
                  Failure* failure);
};

// ---- the plugin itself ------------------------------------------------------------------------------------------

/// What the host offers during `enroll`. A name that is taken already is refused with both places.
struct Registrar {
  void* self;
  Status (*add_kind)(const Registrar*, const Kind*, Failure*);
  Status (*add_cable)(const Registrar*, const Cable*, Failure*);
  Status (*add_line_model)(const Registrar*, const LineModel*, Failure*);
  Status (*add_optimizer)(const Registrar*, const Optimizer*, Failure*);
  Status (*add_writer)(const Registrar*, const Writer*, Failure*);
  Status (*add_tuner_form)(const Registrar*, const TunerForm*, Failure*);
};

/// The first three fields never move, so that any host can refuse any plugin in words.
struct Plugin {
  std::uint32_t interface_number;
  std::uint32_t size;      ///< sizeof(Plugin) as the plugin saw it
  const char* compiler;    ///< compiler_family as the plugin saw it
  const char* name;
  const char* version;
  Status (*enroll)(const Registrar* host, Failure* failure);
};

constexpr Plugin describe(const char* name, const char* version, Status (*enroll)(const Registrar*, Failure*)) {
  return {interface_number, sizeof(Plugin), compiler_family, name, version, enroll};
}

}  // namespace wattfall::sdk

#if defined(_WIN32)
#define WATTFALL_EXPORT __declspec(dllexport)
#else
#define WATTFALL_EXPORT __attribute__((visibility("default")))
#endif

/// Exports the one function that the host looks for.
#define WATTFALL_PLUGIN(plugin) \
  extern "C" WATTFALL_EXPORT const wattfall::sdk::Plugin* wattfall_plugin() { return &(plugin); }
