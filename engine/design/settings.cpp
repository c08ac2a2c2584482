// Each option's text becomes a Source of its own, so that its mistakes are shown like those of a file.
#include "settings.hpp"

namespace wattfall::design {
namespace {

SourcePtr add_source(OptionTexts& texts, Complaints& complaints, const char* name, const std::string& text) {
  auto source = std::make_shared<const wattfall::Source>(name, text);
  texts.sources.push_back(source);
  complaints.is_option(source);
  return source;
}

/// `T=1:9`: a ratio is no expression by itself, but may stand in a list.
std::optional<syntax::Phrase> parse_ratio(OptionTexts& texts, Complaints& complaints, const std::string& text) {
  auto parsed = parse_phrase(add_source(texts, complaints, "--set", '[' + text + ']'));
  complaints.pass_on(std::move(parsed.diagnostics));
  if (!parsed.value || parsed.value->what.empty() || parsed.value->what.front().phrases.empty()) return std::nullopt;
  texts.storages.push_back(parsed.value->storage);
  return parsed.value->what.front().phrases.front();
}

std::optional<syntax::Phrase> parse_value(OptionTexts& texts, Complaints& complaints, const char* name,
                                          const std::string& text) {
  auto parsed = parse_phrase(add_source(texts, complaints, name, text));
  complaints.pass_on(std::move(parsed.diagnostics));
  if (!parsed.value || parsed.value->what.empty()) return std::nullopt;
  texts.storages.push_back(parsed.value->storage);
  return parsed.value->what;
}

}  // namespace

OptionTexts parse_options(const ResolveOptions& options, Complaints& complaints) {
  OptionTexts texts;
  for (const auto& [name, value] : options.settings) {
    Setting setting;
    setting.source = add_source(texts, complaints, "--set", name + "=" + value);
    setting.name = name;
    setting.name_span = {setting.source.get(), 0, static_cast<std::uint32_t>(name.size())};
    const bool ratio = value.find(':') != std::string::npos && value.find('[') == std::string::npos;
    if (auto phrase = ratio ? parse_ratio(texts, complaints, value) : parse_value(texts, complaints, "--set", value))
      setting.properties.push_back(*phrase);
    texts.settings.push_back(std::move(setting));
  }
  for (const std::string& at : options.at)
    if (auto phrase = parse_value(texts, complaints, "--at", at)) texts.at.push_back(*phrase);
  if (options.sweep) {
    const SourcePtr source = add_source(texts, complaints, "--sweep", *options.sweep);
    texts.sweep_span = {source.get(), 0, static_cast<std::uint32_t>(options.sweep->size())};
    auto parsed = parse_sweep(source);
    complaints.pass_on(std::move(parsed.diagnostics));
    if (parsed.value) {
      texts.storages.push_back(parsed.value->storage);
      texts.sweep = parsed.value->what;
    }
  }
  // The language knows a figure as part of a requirement, so it is read as one; its bound is nobody's.
  for (const std::string& figure : options.figures) {
    auto parsed = parse(add_source(texts, complaints, "--figure", "require " + figure + " below 1"));
    complaints.pass_on(std::move(parsed.diagnostics));
    if (parsed.value) texts.figures.push_back(std::move(*parsed.value));
  }
  return texts;
}

void say_unknown_settings(const OptionTexts& options, const std::vector<std::string>& known, Complaints& complaints) {
  for (const Setting& setting : options.settings) {
    if (setting.used) continue;
    auto& wrong = complaints.say("unknown-name", setting.name_span,
                                 "there is no quantity or part called " + in_quotes(setting.name) + " to set");
    wrong.expected = complaints.nearest_few(
        setting.name, [&] { return known; }, 6);
    wrong.hint = complaints.nearest(setting.name, [&] { return known; });
  }
}

}  // namespace wattfall::design
