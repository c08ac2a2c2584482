// Lets PEGTL look for loops in the rules that would never end. In: the rules. Out: how many it found, for a test.
#include <tao/pegtl/contrib/analyze.hpp>

#include "build_tree.hpp"
#include "rules.hpp"

namespace tao::pegtl {

// The two custom rules as the analysis must see them: a unit may be nothing, a call's bracket is one character.
template <class Name>
struct analyze_traits<Name, wattfall::rules::unit> : analyze_opt_traits<> {};
template <class Name>
struct analyze_traits<Name, wattfall::rules::call_open> : analyze_any_traits<> {};

}  // namespace tao::pegtl

namespace wattfall {

std::size_t count_rule_problems() {
  return tao::pegtl::analyze<rules::statement>() + tao::pegtl::analyze<rules::lone_expression>() +
         tao::pegtl::analyze<rules::lone_sweep>() + tao::pegtl::analyze<rules::lone_properties>();
}

}  // namespace wattfall
