// The grammar of one statement, bottom-up. Private: PEGTL stays in the sources that include this. The rules decide by
// what stands next and never go back over text that an action has seen: what begins right and goes on wrong is a
// mistake there and then (`must`), told by messages.hpp. Custom rules (unit, call_open) look at what has been read so
// far.
#pragma once

#include <tao/pegtl.hpp>

#include "draft.hpp"

namespace wattfall::rules {

namespace p = tao::pegtl;

// --- Text ---

struct comment : p::seq<p::one<'#'>, p::star<p::not_one<'\n'>>> {};
struct ws : p::star<p::sor<p::one<' ', '\t', '\r', '\n'>, comment>> {};
struct identifier : p::seq<p::alpha, p::star<p::sor<p::alnum, p::one<'_'>>>> {};
struct dotted : p::list<identifier, p::one<'.'>> {};

template <char... Letters>
struct keyword : p::seq<p::keyword<Letters...>, ws> {};

struct kw_above : keyword<'a', 'b', 'o', 'v', 'e'> {};
struct kw_and : keyword<'a', 'n', 'd'> {};
struct kw_at : keyword<'a', 't'> {};
struct kw_band : keyword<'b', 'a', 'n', 'd'> {};
struct kw_below : keyword<'b', 'e', 'l', 'o', 'w'> {};
struct kw_between : keyword<'b', 'e', 't', 'w', 'e', 'e', 'n'> {};
struct kw_box : keyword<'b', 'o', 'x'> {};
struct kw_by : keyword<'b', 'y'> {};
struct kw_change : keyword<'c', 'h', 'a', 'n', 'g', 'e'> {};
struct kw_design : keyword<'d', 'e', 's', 'i', 'g', 'n'> {};
struct kw_each : keyword<'e', 'a', 'c', 'h'> {};
struct kw_for : keyword<'f', 'o', 'r'> {};
struct kw_frequency : keyword<'f', 'r', 'e', 'q', 'u', 'e', 'n', 'c', 'y'> {};
struct kw_from : keyword<'f', 'r', 'o', 'm'> {};
struct kw_include : keyword<'i', 'n', 'c', 'l', 'u', 'd', 'e'> {};
struct kw_into : keyword<'i', 'n', 't', 'o'> {};
struct kw_keeping : keyword<'k', 'e', 'e', 'p', 'i', 'n', 'g'> {};
struct kw_over : keyword<'o', 'v', 'e', 'r'> {};
struct kw_plane : keyword<'p', 'l', 'a', 'n', 'e'> {};
struct kw_points : keyword<'p', 'o', 'i', 'n', 't', 's'> {};
struct kw_ratio : keyword<'r', 'a', 't', 'i', 'o'> {};
struct kw_reference : keyword<'r', 'e', 'f', 'e', 'r', 'e', 'n', 'c', 'e'> {};
struct kw_require : keyword<'r', 'e', 'q', 'u', 'i', 'r', 'e'> {};
struct kw_set : keyword<'s', 'e', 't'> {};
struct kw_step : keyword<'s', 't', 'e', 'p'> {};
struct kw_sweep : keyword<'s', 'w', 'e', 'e', 'p'> {};
struct kw_to : keyword<'t', 'o'> {};
struct kw_tune : keyword<'t', 'u', 'n', 'e'> {};
struct kw_variant : keyword<'v', 'a', 'r', 'i', 'a', 'n', 't'> {};
struct kw_width : keyword<'w', 'i', 'd', 't', 'h'> {};
struct kw_with : keyword<'w', 'i', 't', 'h'> {};

struct comma : p::seq<p::one<','>, ws> {};
struct colon : p::seq<p::one<':'>, ws> {};
struct equals : p::seq<p::one<'='>, ws> {};

struct string_text
    : p::seq<p::one<'"'>, p::star<p::sor<p::seq<p::one<'\\'>, p::not_one<'\n'>>, p::not_one<'"', '\\', '\n'>>>,
             p::one<'"'>> {};

// --- Numbers ---

struct exponent : p::seq<p::one<'e', 'E'>, p::opt<p::one<'+', '-'>>, p::plus<p::digit>> {};
struct digits : p::sor<p::seq<p::plus<p::digit>, p::opt<p::one<'.'>, p::plus<p::digit>>>,
                       p::seq<p::one<'.'>, p::plus<p::digit>>> {};
struct real_text : p::seq<digits, p::opt<exponent>> {};
struct real_part : real_text {};
struct imaginary_ahead : p::at<p::one<'j'>, p::sor<p::digit, p::seq<p::one<'.'>, p::digit>>> {};
struct imaginary_part : p::seq<p::one<'j'>, real_text> {};
struct complex_sign : p::one<'+', '-'> {};
struct complex_ahead : p::at<ws, complex_sign, ws, imaginary_ahead> {};

/// The unit of the number just read: the longest that fits, or none. What may be one but is not is a mistake (Draft
/// says it).
struct unit {
  using rule_t = unit;
  using subs_t = p::empty_list;
  template <p::apply_mode, p::rewind_mode, template <class...> class, template <class...> class, class Input>
  static bool match(Input& in, Draft& draft) {
    in.bump(draft.read_unit(in.current()));
    return true;
  }
};

struct number_literal
    : p::seq<real_part, p::sor<p::seq<complex_ahead, ws, complex_sign, ws, imaginary_part, unit>, unit>> {};
struct imaginary_literal : p::seq<imaginary_ahead, imaginary_part, unit> {};

// --- Expressions and phrases ---

struct sum;
struct phrase;
struct inner_phrases : p::list_must<phrase, comma> {};

struct string_term : string_text {};
struct name_term : dotted {};

struct bracket_open : p::one<'('> {};
struct bracket_value : p::seq<sum> {};
struct bracket_close : p::one<')'> {};
struct bracket : p::seq<bracket_open, ws, p::must<bracket_value>, p::must<bracket_close>> {};

struct list_open : p::one<'['> {};
struct list_items : inner_phrases {};
struct list_close : p::one<']'> {};
struct list : p::seq<list_open, ws, p::must<list_items>, p::must<list_close>> {};

/// The bracket after a name, where the name can be a call's word: `to (a)` is a preposition and a bracket.
struct call_open {
  using rule_t = call_open;
  using subs_t = p::empty_list;
  template <p::apply_mode, p::rewind_mode, template <class...> class, template <class...> class, class Input>
  static bool match(Input& in, Draft& draft) {
    if (in.empty() || *in.current() != '(' || !draft.may_call(in.current())) return false;
    in.bump(1);
    return true;
  }
};
struct call_close : p::one<')'> {};
struct call_tail : p::seq<call_open, ws, p::opt<inner_phrases>, p::must<call_close>> {};
struct name_or_call : p::seq<name_term, p::opt<ws, call_tail>> {};

struct primary : p::seq<p::sor<number_literal, imaginary_literal, name_or_call, string_term, bracket, list>, ws> {};

struct factor_begin : p::success {};
struct sign : p::one<'+', '-'> {};
struct caret : p::one<'^'> {};
struct operand : p::seq<primary> {};
struct power_tail : p::seq<caret, ws, p::star<sign, ws>, p::must<operand>> {};
struct operand_ahead : p::at<p::sor<p::alnum, p::one<'+', '-', '.', '"', '(', '['>>> {};
struct signed_power : p::seq<operand_ahead, factor_begin, p::star<sign, ws>, p::must<operand>, p::star<power_tail>> {};

struct product_sign : p::one<'*', '/'> {};
struct product_tail : p::seq<product_sign, ws, p::must<signed_power>> {};
struct product : p::seq<signed_power, p::star<product_tail>> {};
struct sum_sign : p::one<'+', '-'> {};
struct product_operand : p::seq<product> {};
struct sum_tail : p::seq<sum_sign, ws, p::must<product_operand>> {};
struct sum : p::seq<product, p::star<sum_tail>> {};

struct pair_value : p::seq<sum> {};
struct pair_tail : p::seq<colon, p::must<pair_value>> {};
struct phrase_term : p::seq<sum, p::opt<pair_tail>> {};

struct of_word : p::keyword<'o', 'f'> {};
struct inch_mark : p::seq<p::digit, p::one<'"'>> {};  // 7/8"
struct cable_text : p::seq<p::at<p::alnum>, p::plus<p::sor<inch_mark, p::alnum, p::one<'_', '.', '/', '-'>>>> {};
struct cable_name : p::sor<string_term, cable_text> {};
struct of_cable : p::seq<of_word, ws, p::must<cable_name>, ws> {};
struct phrase : p::seq<phrase_term, p::star<p::sor<of_cable, phrase_term>>> {};

/// The properties of a part, of `set` and of `change`.
struct properties : p::list_must<phrase, comma> {};

// --- Parts of statements ---

struct place_word : dotted {};
struct single_place : p::seq<place_word, ws> {};
struct group_words : p::plus<place_word, ws, p::opt<comma>> {};
struct group_close : p::one<')'> {};
struct group_place : p::seq<p::one<'('>, ws, p::must<group_words>, p::must<group_close>, ws> {};
struct place : p::sor<group_place, single_place> {};

struct at_places : p::seq<kw_at, p::must<place>> {};
struct from_places : p::seq<kw_from, p::must<place>, p::must<kw_to>, p::must<place>, p::star<kw_to, p::must<place>>> {};
struct member : p::seq<dotted> {};
struct between_member : p::seq<member, ws> {};
struct between_places : p::seq<kw_between, p::must<between_member>, p::must<kw_and>, p::must<between_member>> {};
struct places : p::sor<at_places, from_places, between_places> {};

struct band_name : string_text {};

struct figure_stop : p::sor<kw_at, p::keyword<'o', 'n'>, p::keyword<'i', 'n'>, kw_into, kw_from,
                            p::keyword<'a', 'c', 'r', 'o', 's', 's'>, p::keyword<'t', 'h', 'r', 'o', 'u', 'g', 'h'>,
                            kw_above, kw_below, kw_over, kw_keeping, kw_and, kw_reference> {};
struct figure_word : p::seq<p::not_at<figure_stop>, identifier> {};
struct figure_words : p::plus<figure_word, ws> {};
struct preposition : p::sor<p::keyword<'a', 't'>, p::keyword<'o', 'n'>, p::keyword<'i', 'n'>,
                            p::keyword<'i', 'n', 't', 'o'>, p::keyword<'f', 'r', 'o', 'm'>,
                            p::keyword<'a', 'c', 'r', 'o', 's', 's'>, p::keyword<'t', 'h', 'r', 'o', 'u', 'g', 'h'>> {};
/// `below 2`, where a name should stand before it. (A node may be called `below`: then a word follows, no number.)
struct bound_ahead : p::at<p::sor<kw_below, kw_above>, p::sor<p::digit, p::one<'.', '(', '+', '-'>>> {};
struct figure_target : p::seq<p::not_at<bound_ahead>, dotted> {};
struct figure_into : p::seq<p::not_at<bound_ahead>, dotted> {};
struct figure_reference : p::seq<p::not_at<bound_ahead>, sum> {};
struct figure_limit : p::seq<sum> {};
struct figure_place : p::seq<preposition, ws, p::must<figure_target>, ws, p::opt<kw_into, p::must<figure_into>, ws>,
                             p::opt<kw_reference, p::must<figure_reference>>> {};
struct width_figure
    : p::seq<p::at<kw_width>, figure_words, p::must<figure_place>, p::must<kw_below>, p::must<figure_limit>> {};
struct plain_figure : p::seq<figure_words, p::opt<figure_place>> {};
struct figure : p::sor<width_figure, plain_figure> {};

struct bound : p::sor<p::keyword<'b', 'e', 'l', 'o', 'w'>, p::keyword<'a', 'b', 'o', 'v', 'e'>> {};
struct required_value : p::seq<sum> {};
struct over_from : p::seq<p::not_at<kw_for>, sum> {};
struct over_to : p::seq<p::not_at<kw_for>, sum> {};
struct over_band : p::seq<kw_band, p::must<band_name>, ws> {};
struct over_range : p::sor<over_band, p::seq<p::must<over_from>, p::must<kw_to>, p::must<over_to>>> {};
struct requirement : p::seq<figure, p::must<bound>, ws, p::must<required_value>, p::opt<kw_over, p::must<over_range>>> {
};

// --- Statements ---

struct end_of_statement : p::eof {};

struct title : string_text {};
struct design_statement : p::seq<kw_design, p::must<title>, ws, p::must<end_of_statement>> {};

struct set_name : dotted {};
struct set_properties : p::seq<properties> {};
struct set_end : p::eof {};
struct set_statement
    : p::seq<kw_set, p::must<set_name>, ws, p::must<equals>, p::must<set_properties>, p::must<set_end>> {};

struct part_kind : identifier {};
struct part_name : dotted {};
struct part_colon : p::seq<colon> {};
struct part_properties : p::seq<properties> {};
struct part_end : p::eof {};
struct properties_end : p::eof {};
struct part_statement
    : p::seq<part_kind, ws, p::must<part_name>, ws, p::must<places>,
             p::sor<p::seq<part_colon, p::must<part_properties>, p::must<properties_end>>, p::must<part_end>>> {};

struct change_name : dotted {};
struct change_properties : p::seq<properties> {};
struct change_colon : p::seq<colon> {};
struct change_statement : p::seq<kw_change, p::must<change_name>, ws, p::must<change_colon>, p::must<change_properties>,
                                 p::must<properties_end>> {};

struct include_path : string_text {};
struct include_statement : p::seq<kw_include, p::must<include_path>, ws, p::must<end_of_statement>> {};

struct band_from : p::seq<sum> {};
struct band_to : p::seq<sum> {};
struct band_statement : p::seq<kw_band, p::must<band_name>, ws, p::must<band_from>, p::must<kw_to>, p::must<band_to>,
                               p::must<end_of_statement>> {};

struct sweep_from : p::seq<sum> {};
struct sweep_to : p::seq<p::not_at<kw_step>, sum> {};
struct sweep_step : p::seq<sum> {};
struct sweep_count : p::seq<sum> {};
struct sweep_list : p::seq<list> {};
struct sweep_band : p::seq<kw_band, p::must<band_name>, ws> {};
struct sweep_at : p::seq<kw_at, p::must<sweep_list>, ws> {};
struct sweep_range : p::sor<sweep_band, p::seq<p::must<sweep_from>, p::must<kw_to>, p::must<sweep_to>>> {};
struct by_ratio : p::seq<comma, p::must<kw_by>, p::must<kw_ratio>> {};
struct sweep_amount : p::sor<p::seq<kw_step, p::must<sweep_step>>,
                             p::seq<comma, p::must<sweep_count>, p::must<kw_points>, p::opt<by_ratio>>> {};
struct sweep_body : p::sor<sweep_at, p::seq<sweep_range, p::must<sweep_amount>>> {};
struct sweep_statement : p::seq<kw_sweep, sweep_body, p::must<end_of_statement>> {};

struct knob : dotted {};
struct tune_at : p::seq<p::not_at<kw_for>, sum> {};
struct tune_each : p::seq<kw_each, p::must<kw_frequency>> {};
struct tune_over : p::seq<kw_over, p::must<over_range>> {};
struct tune_when : p::sor<p::seq<kw_at, p::sor<tune_each, p::must<tune_at>>>, tune_over> {};
struct most_or_least : p::sor<p::keyword<'m', 'o', 's', 't'>, p::keyword<'l', 'e', 'a', 's', 't'>> {};
struct tune_goal : p::seq<figure> {};
struct tune_requirement : p::seq<requirement> {};
struct tune_keeping : p::seq<p::sor<p::seq<comma, p::must<kw_keeping>>, kw_keeping>, p::must<tune_requirement>,
                             p::star<kw_and, p::must<tune_requirement>>> {};
struct tune_end : p::eof {};
struct tune_statement
    : p::seq<kw_tune, p::must<knob>, ws, p::star<comma, p::must<knob>, ws>, p::must<tune_when>, p::must<kw_for>,
             p::must<most_or_least>, ws, p::must<tune_goal>, p::opt<tune_keeping>, p::must<tune_end>> {};

struct require_statement : p::seq<kw_require, p::must<requirement>, p::must<end_of_statement>> {};

struct plane_name : dotted {};
struct plane_node : dotted {};
struct plane_into : dotted {};
struct plane_statement : p::seq<kw_plane, p::must<plane_name>, ws, p::must<kw_at>, p::must<plane_node>, ws,
                                p::opt<kw_into, p::must<plane_into>, ws>, p::must<end_of_statement>> {};

struct box_name : dotted {};
struct port_name : dotted {};
struct port_names : p::plus<port_name, ws, p::opt<comma>> {};
struct ports : p::seq<p::one<'('>, ws, p::must<port_names>, p::must<group_close>, ws> {};
struct with_name : dotted {};
struct with_value : p::seq<sum> {};
struct with_item : p::seq<with_name, ws, p::must<equals>, p::must<with_value>> {};
struct box_end : p::eof {};
struct box_statement
    : p::seq<kw_box, p::must<box_name>, ws, p::must<ports>,
             p::opt<kw_with, p::must<with_item>, p::star<comma, p::must<with_item>>>, p::must<box_end>> {};

struct variant_name : string_text {};
struct variant_statement : p::seq<kw_variant, p::must<variant_name>, ws, p::must<end_of_statement>> {};

struct statement : p::sor<design_statement, set_statement, change_statement, include_statement, band_statement,
                          sweep_statement, tune_statement, require_statement, plane_statement, box_statement,
                          variant_statement, p::must<part_statement>> {};

// --- Other doors ---

struct lone_value : p::seq<sum> {};
struct lone_expression : p::seq<ws, p::must<lone_value>, p::must<end_of_statement>> {};
struct lone_sweep : p::seq<ws, sweep_body, p::must<end_of_statement>> {};
/// The rest of a property list, after a mistake in it.
struct lone_properties : p::seq<ws, p::must<properties>, p::must<properties_end>> {};

}  // namespace wattfall::rules
