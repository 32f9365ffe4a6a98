#pragma once

#include "base/result.h"
#include "base/working.h"
#include "checks/check.h"
#include "edit/thing.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

/// The Card: what is chosen, in sentences whose underlined words are fields. No Qt here; the window
/// lays the sentences out and lets the fields be typed into.
namespace throwline::card {

/// The value of `many_lines` is a list, an item on each line.
enum class FieldKind { text, length, angle, number, choice, yes_no, clock, date, many_lines };

/// A value that can be typed.
struct Field {
    /// Stable, for tests and for keeping the keyboard's place over edits: "eye_height".
    std::string key;
    /// Spoken by a screen reader: "Lens height of camera 2".
    std::string label;
    FieldKind kind = FieldKind::text;
    /// As shown now, with its unit: "1.42 m". Several things that differ: empty, `mixed` true.
    std::string value;
    bool mixed = false;
    /// What may be chosen; a text may be typed as well unless kind is choice.
    std::vector<std::string> choices{};
    /// Range and unit, for the tool tip: "0.1 m to 10 m; metres, feet and inches".
    std::string hint{};
    /// The change that a typed text makes, of all things that are chosen. Errors: one sentence with
    /// what was found and what is allowed. Pure: the context is that of the moment of typing.
    std::function<Result<edit::Step>(const edit::Context&, const std::string&)> set;
    /// What is known about the value as it stands: the same in other units, the row of the
    /// catalogue with its source, or how it follows from others. Empty when there is nothing.
    std::function<Working()> working{};
};

/// A figure that follows from others: cannot be typed, but shows its working.
struct Figure {
    std::string key;
    /// Spoken by a screen reader: "Angle of view of shot 2A".
    std::string label;
    std::string value;
    std::function<Working()> working;
};

/// A piece of a sentence.
using Piece = std::variant<std::string, Field, Figure>;
struct Sentence {
    std::vector<Piece> pieces;
    /// A heading over the sentences that follow; set apart.
    bool heading = false;
};

struct Card {
    /// "Camera 2", "3 lamps"
    std::string title;
    std::vector<Sentence> sentences;
};

/// What a card is made of. `analysis` is null while it is not known; figures are then left out.
struct CardInput {
    edit::Context context;
    std::span<const edit::Thing> chosen;
    const checks::Analysis* analysis = nullptr;
};

/// The card of what is chosen. One thing: all its values. Several of one kind: the values that all
/// have. Several kinds: name count, finish and elevation where all have them. Nothing: the
/// production (title, units, site, targets), the beat and the shot of now.
Card card_for(const CardInput& input);

/// The field with a key, or null.
const Field* field(const Card& card, const std::string& key);
/// The figure with a key, or null.
const Figure* figure(const Card& card, const std::string& key);
/// The words of a card without their fields' machinery, for tests: "Camera 2, on [tripod] at ...".
std::string as_text(const Card& card);

} // namespace throwline::card
