// `wattfall weigh`: what every value of a feed file does to its figures.
#include "engine/weigh_up.hpp"

#include "deliver.hpp"
#include "verbs.hpp"

namespace wattfall::app {

int weigh_verb(const Arguments& arguments, const host::Plugins& plugins) {
  const host::Registry& registry = plugins.registry();
  if (Diagnostics wrong = check_writers(arguments.deliveries, registry); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);

  const Result<SourcePtr> text = read_text(arguments.file);
  if (!text.value) return refuse(arguments.deliveries, text.diagnostics, arguments.color);

  RunOptions options = options_for(arguments, arguments.file);
  options.resolve.figures = arguments.figures;
  const Outcome outcome = weigh_up(*text.value, registry, options);
  if (!outcome.diagnostics.empty()) return refuse(arguments.deliveries, outcome.diagnostics, arguments.color);

  if (Diagnostics wrong = deliver(outcome.document, arguments.deliveries, registry, arguments.color); !wrong.empty())
    return refuse(arguments.deliveries, wrong, arguments.color);
  return 0;
}

}  // namespace wattfall::app
