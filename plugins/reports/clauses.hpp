// Sentences about tuning that the readable reports and the page share.
#pragma once

#include <string>

#include "reading.hpp"

namespace reports {

/// A document's clause as a sentence.
std::string sentence(std::string clause);

/// With how much room to spare a tuner's buying list stands.
std::string margins_of(const Json& tuner);

}  // namespace reports
