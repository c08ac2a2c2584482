// Keeps each mistake once, by its code, place and sentence.
#include "complaints.hpp"

#include <algorithm>
#include <utility>

#include "grammar/nearest_name.hpp"

namespace wattfall::design {
namespace {

std::string key_of(const std::string& code, Span span, const std::string& text) {
  return code + '\n' + std::to_string(reinterpret_cast<std::uintptr_t>(span.source)) + ' ' +
         std::to_string(span.begin) + ' ' + std::to_string(span.end) + '\n' + text;
}

}  // namespace

std::string in_quotes(std::string_view name) {
  std::string text(1, '`');
  text += name;
  text += '`';
  return text;
}

Diagnostic& Complaints::say(std::string code, Span span, std::string text) {
  Diagnostic found{};
  found.fault = options_.contains(span.source) ? Fault::usage : Fault::design;
  const bool is_new = seen_.insert(key_of(code, span, text)).second;
  found.code = std::move(code);
  found.span = span;
  found.text = std::move(text);
  if (!is_new) return again_ = std::move(found);
  return said_.emplace_back(std::move(found));
}

void Complaints::pass_on(Diagnostics others) {
  for (Diagnostic& other : others) {
    if (options_.contains(other.span.source)) other.fault = Fault::usage;
    if (seen_.insert(key_of(other.code, other.span, other.text)).second) said_.push_back(std::move(other));
  }
}

std::vector<std::string> Complaints::affordable(const Names& known) {
  if (budget_ == 0) return {};
  std::vector<std::string> names = known();
  std::sort(names.begin(), names.end());
  budget_ -= std::min(budget_, names.size());
  return names;
}

std::string Complaints::nearest(std::string_view name, const Names& known) {
  return nearest_name(name, affordable(known));
}

std::string Complaints::nearest_few(std::string_view name, const Names& known, std::size_t most) {
  return nearest_first(name, affordable(known), most);
}

void Complaints::keep_texts_of(Diagnostic& diagnostic) const {
  const auto keep_text = [&](Span span) {
    const auto found = kept_.find(span.source);
    if (found != kept_.end()) diagnostic.keeps.push_back(found->second);
  };
  keep_text(diagnostic.span);
  for (const Diagnostic::Note& note : diagnostic.notes) keep_text(note.span);
}

Diagnostics Complaints::take() {
  Diagnostics all(std::make_move_iterator(said_.begin()), std::make_move_iterator(said_.end()));
  said_.clear();
  for (Diagnostic& diagnostic : all) keep_texts_of(diagnostic);
  sort_by_place(all);
  return all;
}

}  // namespace wattfall::design
