#include "texts.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>

namespace wattfall::app {
namespace {

/// What a shell offers where a value is wanted.
enum class Wanted { nothing, flag, files, folders, writers, words };

struct Option {
  std::string name;  ///< "--to", or "FILE" for one without a name
  std::string type;  ///< "WRITER[=PATH]"
  std::string meaning;
  Wanted wanted = Wanted::nothing;
  std::vector<std::string> words;
  bool positional = false, required = false;
};

struct Verb {
  std::string name, meaning, example;
  std::vector<Option> options;
};

/// The members of "NAME:{a,b,c}".
std::vector<std::string> words_in(const std::string& type) {
  std::vector<std::string> words;
  const std::size_t begin = type.find('{'), end = type.find('}');
  if (begin == std::string::npos || end == std::string::npos) return words;
  std::string word;
  for (std::size_t i = begin + 1; i <= end; ++i) {
    if (type[i] == ',' || i == end) words.push_back(std::exchange(word, {}));
    else word += type[i];
  }
  return words;
}

Option read_option(const CLI::Option& given) {
  Option option;
  option.positional = given.get_positional();
  option.required = given.get_required();
  option.name = option.positional ? given.get_name(true) : "--" + given.get_lnames().front();
  const std::string type = given.get_type_name();
  option.type = type.substr(0, type.find(':'));
  option.meaning = given.get_description();
  option.words = words_in(type);
  const bool flag = !option.positional && given.get_items_expected_max() == 0;
  if (flag) option.type.clear();
  if (option.positional) option.type = option.name;
  option.wanted = flag                                     ? Wanted::flag
                  : !option.words.empty()                  ? Wanted::words
                  : option.type.starts_with("WRITER")      ? Wanted::writers
                  : option.type == "DIR"                   ? Wanted::folders
                  : option.type == "FILE" || option.type == "PATH" ? Wanted::files
                                                           : Wanted::nothing;
  return option;
}

std::vector<Verb> verbs_of(const CLI::App& app) {
  std::vector<Verb> verbs;
  for (const CLI::App* given : app.get_subcommands([](const CLI::App*) { return true; })) {
    Verb verb{given->get_name(), given->get_description(), given->get_footer(), {}};
    for (const CLI::Option* option : given->get_options([](const CLI::Option* one) { return one->nonpositional() || one->get_positional(); }))
      verb.options.push_back(read_option(*option));
    verbs.push_back(verb);
  }
  return verbs;
}

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
  return text;
}

std::vector<std::string> names_of(const std::vector<Verb>& verbs) {
  std::vector<std::string> names;
  for (const Verb& verb : verbs) names.push_back(verb.name);
  return names;
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += by.size()) text.replace(at, what.size(), by);
  return text;
}

// ---- the manual page -----------------------------------------------------------------------------------------------

/// Text for roff: backslashes and hyphens as they are, no line that begins with a request.
std::string roff(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool first = i == 0 || text[i - 1] == '\n';
    if (first && (text[i] == '.' || text[i] == '\'')) out += "\\&";
    out += text[i] == '\\' ? "\\e" : text[i] == '-' ? "\\-" : std::string(1, text[i]);
  }
  return out;
}

std::string roff_option(const Option& option) {
  const std::string value = option.positional || option.type.empty() ? "" : " \\fI" + roff(option.type) + "\\fR";
  std::string text = ".TP\n\\fB" + roff(option.name) + "\\fR" + value + "\n" + roff(option.meaning);
  if (!option.words.empty()) text += " (" + roff(joined(option.words, ", ")) + ")";
  return text + "\n";
}

std::string manual(const CLI::App& app, const std::vector<Verb>& verbs) {
  std::string text = ".TH WATTFALL 1 \"\" \"wattfall " WATTFALL_VERSION "\" \"User Commands\"\n.SH NAME\nwattfall \\- books every watt between a transmitter and its antenna\n"
                     ".SH SYNOPSIS\n";
  for (const Verb& verb : verbs) {
    text += ".B wattfall " + verb.name + "\n";
    for (const Option& option : verb.options)
      if (option.positional) text += option.required ? "\\fI" + roff(option.name) + "\\fR\n" : "[\\fI" + roff(option.name) + "\\fR]\n";
    text += "[\\fIoptions\\fR]\n.br\n";
  }
  text += ".SH DESCRIPTION\n" + roff(replaced(app.get_description(), "\n", " ")) + "\n.SH VERBS\n";
  for (const Verb& verb : verbs) {
    text += ".SS " + verb.name + "\n" + roff(verb.meaning) + ".\n";
    for (const Option& option : verb.options) text += roff_option(option);
    if (!verb.example.empty()) text += ".PP\n.nf\n" + roff(verb.example) + "\n.fi\n";
  }
  text += ".SH OPTIONS WITHOUT A VERB\n";
  for (const CLI::Option* option : app.get_options([](const CLI::Option* one) { return one->nonpositional(); })) text += roff_option(read_option(*option));
  text += ".SH EXIT STATUS\n" + roff(replaced(app.get_footer(), "\n", " ")) +
          "\n.SH ENVIRONMENT\n.TP\n\\fBWATTFALL_PLUGINS\\fR\nfolders in which plugins are looked for, with colons between them\n"
          ".TP\n\\fBNO_COLOR\\fR\nwhere it is set, no colours are used unless \\-\\-color always asks for them\n"
          ".SH CAUTIONS\nWhat wattfall prints is arithmetic on what it was told. High voltage, RF burns, heat and exposure are real: local electrical and radio codes and\n"
          "a licensed operator's judgement come before anything that it prints.\n";
  return text;
}

// ---- completions ---------------------------------------------------------------------------------------------------

std::string bash_words(const Verb& verb, bool positional) {
  std::vector<std::string> words;
  for (const Option& option : verb.options)
    if (option.positional == positional) {
      if (positional) words.insert(words.end(), option.words.begin(), option.words.end());
      else words.push_back(option.name);
    }
  return joined(words, " ");
}

bool takes_files(const Verb& verb) {
  return std::any_of(verb.options.begin(), verb.options.end(), [](const Option& option) { return option.positional && option.wanted == Wanted::files; });
}

/// Every named option once, over all verbs.
std::map<std::string, Option> named(const std::vector<Verb>& verbs) {
  std::map<std::string, Option> all;
  for (const Verb& verb : verbs)
    for (const Option& option : verb.options)
      if (!option.positional) all.try_emplace(option.name, option);
  return all;
}

/// The names in the first column of `wattfall list writers`, without its head.
constexpr const char* list_writers = "list writers --color never 2>/dev/null | sed -e 1d -e 's/ .*//'";

std::string bash_value(const Option& option) {
  switch (option.wanted) {
    case Wanted::files: return "compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- \"$word\"))";
    case Wanted::folders: return "compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -d -- \"$word\"))";
    case Wanted::writers: return std::string("COMPREPLY=($(compgen -W \"$(\"${COMP_WORDS[0]}\" ") + list_writers + ")\" -- \"$word\"))";
    case Wanted::words: return "COMPREPLY=($(compgen -W '" + joined(option.words, " ") + "' -- \"$word\"))";
    default: return "COMPREPLY=()";
  }
}

std::string bash(const CLI::App& app, const std::vector<Verb>& verbs) {
  std::vector<std::string> top;
  for (const CLI::Option* option : app.get_options([](const CLI::Option* one) { return one->nonpositional(); })) top.push_back(read_option(*option).name);
  std::string text = "# Completions of wattfall for bash: source this file, or put it where bash-completion looks.\n_wattfall() {\n"
                     "  local word=\"${COMP_WORDS[COMP_CWORD]}\" before=\"${COMP_WORDS[COMP_CWORD-1]}\" verb=\"${COMP_WORDS[1]}\" files= options= words=\n"
                     "  COMPREPLY=()\n  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W '" +
                     joined(names_of(verbs), " ") + ' ' + joined(top, " ") + "' -- \"$word\"))\n    return\n  fi\n  case \"$before\" in\n";
  for (const auto& [name, option] : named(verbs))
    if (option.wanted != Wanted::flag) text += "    " + name + ") " + bash_value(option) + "; return ;;\n";
  text += "  esac\n  case \"$verb\" in\n";
  for (const Verb& verb : verbs)
    text += "    " + verb.name + ") options='" + bash_words(verb, false) + "' words='" + bash_words(verb, true) + "' files=" + (takes_files(verb) ? "yes" : "") + " ;;\n";
  return text + "  esac\n  case \"$word\" in\n    -*) COMPREPLY=($(compgen -W \"$options\" -- \"$word\")); return ;;\n  esac\n"
                "  COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n"
                "  if [ -n \"$files\" ]; then\n    # One name a line: names may have blanks. Feed files, and folders on the way to them.\n    local IFS=$'\\n'\n"
                "    compopt -o filenames 2>/dev/null\n    COMPREPLY+=($(compgen -f -X '!*.feed' -- \"$word\") $(compgen -d -- \"$word\"))\n  fi\n}\ncomplete -F _wattfall wattfall\n";
}

/// Inside single quotes, in _arguments' brackets.
std::string zsh_quoted(const std::string& text) {
  std::string out;
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : c == '[' || c == ']' || c == ':' || c == '\\' ? std::string("\\") + c : std::string(1, c);
  return out;
}

std::string zsh_action(const Option& option) {
  switch (option.wanted) {
    case Wanted::files: return "_files";
    case Wanted::folders: return "_files -/";
    case Wanted::writers: return "_wattfall_writers";
    case Wanted::words: return "(" + joined(option.words, " ") + ")";
    default: return " ";
  }
}

std::string zsh(const std::vector<Verb>& verbs) {
  std::string text = std::string("#compdef wattfall\n_wattfall_writers() {\n  local -a names\n  names=(${(f)\"$(wattfall ") + list_writers +
                     ")\"})\n  compadd -S '' -a names\n}\n_wattfall() {\n  local -a verbs\n  verbs=(\n";
  for (const Verb& verb : verbs) text += "    '" + verb.name + ":" + zsh_quoted(verb.meaning) + "'\n";
  text += "  )\n  if [[ $words[2] == --print ]]; then\n    (( CURRENT == 3 )) && compadd " + joined(texts(), " ") + "\n    return\n  fi\n  if (( CURRENT == 2 )); then\n    _describe verb verbs\n    _arguments '--help[say how it is used]' '--version[say which version it is]' '--print[print the manual page or completions]:text:(" +
          joined(texts(), " ") + ")'\n    return\n  fi\n  local verb=$words[2]\n  shift words; (( CURRENT-- ))\n  case $verb in\n";
  for (const Verb& verb : verbs) {
    text += "    " + verb.name + ")\n      _arguments";
    for (const Option& option : verb.options) {
      if (option.positional) text += " \\\n        '*:" + zsh_quoted(option.name) + ":" + zsh_action(option) + "'";
      else text += " \\\n        '*" + option.name + "[" + zsh_quoted(option.meaning) + "]" + (option.wanted == Wanted::flag ? "" : ":" + zsh_quoted(option.type) + ":" + zsh_action(option)) + "'";
      if (option.positional && option.name != verb.options.back().name && option.wanted == Wanted::words) text.replace(text.rfind("'*:"), 3, "'1:");
    }
    text += "\n      ;;\n";
  }
  return text + "  esac\n}\n_wattfall \"$@\"\n";
}

std::string fish_quoted(const std::string& text) { return "'" + replaced(replaced(text, "\\", "\\\\"), "'", "\\'") + "'"; }

std::string fish_value(const Option& option) {
  switch (option.wanted) {
    case Wanted::flag: return "";
    case Wanted::files: return " -r -F";
    case Wanted::folders: return " -x -a '(__fish_complete_directories)'";
    case Wanted::writers: return " -x -a " + fish_quoted(std::string("(wattfall ") + list_writers + ")");
    case Wanted::words: return " -x -a '" + joined(option.words, " ") + "'";
    default: return " -x";
  }
}

std::string fish(const std::vector<Verb>& verbs) {
  std::string text = "# Completions of wattfall for fish.\ncomplete -c wattfall -n __fish_use_subcommand -f\n"
                     "complete -c wattfall -n __fish_use_subcommand -l version -d 'Say which version it is'\n"
                     "complete -c wattfall -n __fish_use_subcommand -l print -x -a '" + joined(texts(), " ") + "' -d 'Print the manual page or completions'\n";
  for (const Verb& verb : verbs) text += "complete -c wattfall -n __fish_use_subcommand -a " + verb.name + " -d " + fish_quoted(verb.meaning) + "\n";
  for (const Verb& verb : verbs) {
    const std::string begin = "complete -c wattfall -n '__fish_seen_subcommand_from " + verb.name + "'";
    for (const Option& option : verb.options) {
      if (!option.positional) text += begin + " -l " + option.name.substr(2) + fish_value(option) + " -d " + fish_quoted(option.meaning) + "\n";
      else if (option.wanted == Wanted::words) text += begin + " -f -a '" + joined(option.words, " ") + "'\n";
    }
  }
  return text;
}

}  // namespace

const std::vector<std::string>& texts() {
  static const std::vector<std::string> all{"man", "bash", "zsh", "fish"};
  return all;
}

std::string make_text(const std::string& what, const CLI::App& app) {
  const std::vector<Verb> verbs = verbs_of(app);
  if (what == "bash") return bash(app, verbs);
  if (what == "zsh") return zsh(verbs);
  if (what == "fish") return fish(verbs);
  return manual(app, verbs);
}

}  // namespace wattfall::app
