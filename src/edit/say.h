#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// The command line inside the window: "move camera 2 left 40 cm".
namespace throwline::edit {

/// What was said, understood: a change of the plan, or a wish that the window fulfils by the id of
/// one of its actions ("undo", "fit", "show levels"), or another choice or moment.
struct ActionWish {
    std::string action;
};
struct ChooseWish {
    std::vector<Thing> things;
};
struct NowWish {
    Now now;
};
/// A value of the Card, which is fulfilled by card::fulfilled(). No things: those that are chosen.
struct FieldWish {
    std::vector<Thing> things;
    /// In the words that were said: "height".
    std::string field;
    std::string text;
};
using Said = std::variant<Step, ActionWish, ChooseWish, NowWish, FieldWish>;

/// A sentence that can be said, for the help and for completion.
struct Saying {
    /// "move THINGS left LENGTH"
    std::string_view form;
    std::string_view meaning;
    std::string_view example;
};
std::span<const Saying> sayings();

/// An action of the window that can be said.
struct SayableAction {
    std::string id;
    /// "undo", "fit the floor"
    std::string words;
};

/// Understands one sentence. Things are named as in the plan, several with "and" or commas, "it"
/// and "them" being what is chosen, "all lamps" all of a kind. Lengths and angles in any notation.
/// Errors say which word is not understood, with its column and the nearest that would be.
Result<Said> said(const Context& context, std::span<const Thing> chosen, std::string_view sentence,
                  std::span<const SayableAction> actions);

/// The first beat or shot that a step added, to go there; nothing when it added none.
std::optional<Now> moment_made(const plan::Plan& before, const plan::Plan& after);

/// Words that may stand next after what was typed so far, nearest first, at most 12.
std::vector<std::string> completions(const Context& context, std::span<const Thing> chosen,
                                     std::string_view sentence,
                                     std::span<const SayableAction> actions);
/// The sentence with a completion in place of the beginning of it that was typed: "move cam" and
/// "camera 2" give "move camera 2".
std::string completed(std::string_view sentence, std::string_view completion);

} // namespace throwline::edit
