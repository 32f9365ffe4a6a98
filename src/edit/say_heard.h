#pragma once

#include "edit/say.h"
#include "edit/say_names.h"
#include "edit/say_words.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Sentences held against the forms that can be said.
namespace throwline::edit {

/// What stands in the open places of a form, each sort in the order of the form.
struct Heard {
    std::vector<std::vector<Thing>> things;
    std::vector<Vec2> places;
    std::vector<Length> lengths;
    std::vector<Angle> angles;
    /// Shares of one, and counts.
    std::vector<double> numbers;
    /// Which of the words a form offers: "left" of "left|right".
    std::vector<std::string> words;
    std::vector<plan::Id<plan::Beat>> beats;
    std::vector<plan::Id<plan::Shot>> shots;
    std::vector<plan::Id<plan::Circuit>> circuits;
    std::vector<StoreItem> items;
    /// Free texts, grid positions and names of fields, as typed.
    std::vector<std::string> texts;
};

/// A row of the sentences that can be said. In a form, words in capitals are open places, "|" parts
/// words of which one is said, all else is said as it stands.
struct SayingRow {
    Saying saying;
    Result<Said> (*make)(const Context& context, const Heard& heard);
};

/// The sorts of open places.
enum class Slot {
    word,
    things,
    thing,
    camera,
    people,
    lamps,
    pipe,
    place,
    position,
    length,
    unit,
    angle,
    number,
    share,
    beat,
    shot,
    circuit,
    item,
    field,
    text,
    action,
    end
};
/// "a length, such as 40 cm"
std::string_view name_of(Slot slot);

/// What could have stood at a word of the sentence.
struct Expected {
    Slot slot = Slot::word;
    /// Of a word or an action, what it is.
    std::string word;

    auto operator<=>(const Expected&) const = default;
};

/// Listens to one sentence and remembers what it would have understood.
class Listener {
  public:
    Listener(const Context& context, const SaidWords& words, const Vocabulary& vocabulary);

    /// What the sentence says when it has this form.
    std::optional<Heard> heard(std::string_view form);
    /// Whether the sentence is these words, colons left out.
    bool hears_words(const std::string& words);

    /// What could have stood at a word; of the end, after the last.
    std::vector<Expected> expected_at(std::size_t word) const;
    /// The word at which every form ended that went furthest.
    std::size_t furthest() const { return furthest_; }
    /// What is wrong with what stands there, where that is known better than by what was expected.
    const std::string& complaint() const { return complaint_; }
    /// The column that it is about; 0 for that of the word.
    int complaint_column() const { return complaint_column_; }
    /// Names that an expected sort of thing may have.
    std::vector<std::string> names_for(const Expected& expected) const;

  private:
    struct Piece {
        Slot slot = Slot::word;
        std::vector<std::string> words;
    };
    using Pieces = std::vector<Piece>;
    struct Point {
        Vec2 at = Vec2::Zero();
        std::size_t next = 0;
    };

    static Pieces pieces_of(std::string_view form);
    void expect(std::size_t at, Slot slot, const std::string& word = {});
    void complain(std::size_t at, const std::string& message, int column);
    bool is_word(std::size_t at, std::string_view word) const;

    std::optional<Heard> rest(const Pieces& pieces, std::size_t piece, std::size_t at,
                              const Heard& heard);
    std::optional<Heard> word(const Pieces& pieces, std::size_t piece, std::size_t at,
                              const Heard& heard);
    std::optional<Heard> things(const Pieces& pieces, std::size_t piece, std::size_t at,
                                const Heard& heard, const std::vector<Thing>& before);
    std::optional<Heard> place(const Pieces& pieces, std::size_t piece, std::size_t at,
                               const Heard& heard);
    std::optional<Heard> position(const Pieces& pieces, std::size_t piece, std::size_t at,
                                  const Heard& heard);
    std::optional<Heard> length(const Pieces& pieces, std::size_t piece, std::size_t at,
                                const Heard& heard);
    std::optional<Heard> angle(const Pieces& pieces, std::size_t piece, std::size_t at,
                               const Heard& heard);
    std::optional<Heard> number(const Pieces& pieces, std::size_t piece, std::size_t at,
                                const Heard& heard);
    std::optional<Heard> field(const Pieces& pieces, std::size_t piece, std::size_t at,
                               const Heard& heard);
    std::optional<Heard> text(std::size_t at, const Heard& heard);
    template <class Meaning>
    std::optional<Heard> name(const Pieces& pieces, std::size_t piece, std::size_t at,
                              const Heard& heard, const Names<Meaning>& names,
                              std::vector<Meaning> Heard::* kept);

    std::vector<std::pair<Length, std::size_t>> lengths_at(std::size_t at);
    std::vector<Point> places_at(std::size_t at);
    void add_pair(std::vector<Point>& points, std::size_t at);
    void add_beside(std::vector<Point>& points, std::size_t at);
    void add_named(std::vector<Point>& points, std::size_t at);

    const Context& context_;
    const SaidWords& words_;
    const Vocabulary& vocabulary_;
    std::set<std::pair<std::size_t, Expected>> expected_;
    /// In the order in which they came up, for offering the likeliest first.
    std::vector<std::pair<std::size_t, Expected>> in_order_;
    std::size_t furthest_ = 0;
    std::string complaint_;
    int complaint_column_ = 0;
};

/// The tables of sayings, one a family; what stands first is tried first.
std::span<const SayingRow> move_sayings();
std::span<const SayingRow> put_sayings();
std::span<const SayingRow> draw_sayings();
std::span<const SayingRow> aim_sayings();
std::span<const SayingRow> set_sayings();
std::span<const SayingRow> hold_sayings();
std::span<const SayingRow> order_sayings();
/// All of them.
std::vector<const SayingRow*> all_sayings();

} // namespace throwline::edit
