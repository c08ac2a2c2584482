// What the tuner found beside its settings, and the dial table an operator keeps.
#pragma once

#include <set>

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// The value of `tuning`: an entry a search.
void write_tuning(JsonText& out, const VariantResult& variant);

/// The value of `buy`: for each tuner whose form was tried, the parts it takes.
void write_buy(JsonText& out, const VariantResult& variant);
bool has_tuner(const VariantResult& variant);

/// `made` of a knob of preferred values: what each of these values is made of.
void write_made(JsonText& out, const design::Knob& knob, const std::set<double>& values);

/// The value of `dial`: columns over the frequencies.
void write_dial(JsonText& out, const VariantResult& variant);

}  // namespace wattfall::report
