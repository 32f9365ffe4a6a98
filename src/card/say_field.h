#pragma once

#include "edit/say.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Values of the Card by their words: "set height of key to 2.4 m".
namespace throwline::card {

/// The step that sets the value of a wish, of its things or of those that are chosen. A value is
/// named by its label ("lens height"), its key ("eye height"), or any word that only one of them
/// has. Errors: no such value, with the nearest; several of them; what the value itself says.
Result<edit::Step> fulfilled(const edit::Context& context, std::span<const edit::Thing> chosen,
                             const edit::FieldWish& wish);

/// Words for the values that things have in common, of the production when there are none.
std::vector<std::string> field_words(const edit::Context& context,
                                     std::span<const edit::Thing> things);

/// As edit::completions(), with the words of values behind "set".
std::vector<std::string> words_next(const edit::Context& context,
                                    std::span<const edit::Thing> chosen, std::string_view sentence,
                                    std::span<const edit::SayableAction> actions);

} // namespace throwline::card
