// What every document begins with. Private to the room.
#pragma once

#include "json_text.hpp"
#include "report/document.hpp"

namespace wattfall::report {

/// The keys schema, verb, program, plugins and design of an open object; `set_aside` where there is any.
void write_envelope(JsonText& out, const std::string& verb, const host::Registry& registry,
                    const std::vector<VariantResult>& variants, const SetAsides& set_aside = {});

}  // namespace wattfall::report
