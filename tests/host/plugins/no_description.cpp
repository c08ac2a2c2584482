#include "faulty.hpp"

extern "C" WATTFALL_EXPORT const sdk::Plugin* wattfall_plugin() {
  return nullptr;
}
