#pragma once

#include "plan/differences.h"
#include "plan/field_changes.h"

#include <span>

namespace throwline::plan {

/// What is being compared: the thing with its places in both plans, and how sentences call it:
/// "lamp 3 (key)".
struct Subject {
    ChangedThing thing;
    std::string said;
};

/// What has no place on the plan.
Subject placeless(ThingKind kind, std::string name, std::string said);

/// A difference before those that belong together are told as one.
struct LedgerEntry {
    Difference difference;
    std::string said;
    /// Of a move across the plan.
    std::optional<Vec2> shift;
    /// Distance moved or raised, 0 for anything else.
    double size_m = 0.0;
    bool slight = false;
};

/// Where the comparison of each kind of thing writes down what it finds.
class DifferenceLedger {
  public:
    explicit DifferenceLedger(UnitSystem units) : units_{units} {}

    UnitSystem units() const { return units_; }
    FieldChanges fields() const { return FieldChanges{units_}; }

    /// `more` follows the verb: " after beat 2", ": Fresnel 1 kW, grid C2".
    void added(const Subject& subject, const std::string& more = {});
    void removed(const Subject& subject, const std::string& more = {});
    void renamed(const Subject& subject, const std::string& old_said);
    /// Points of equal count that all moved alike are one move; otherwise the thing "is another
    /// shape", as `reshaped` puts it. Equal points say nothing. `more` follows the sentence.
    void moved(const Subject& subject, std::span<const Vec2> before, std::span<const Vec2> now,
               std::string_view reshaped = "has another shape", const std::string& more = {});
    void raised(const Subject& subject, Length before, Length now);
    void turned(const Subject& subject, Angle before, Angle now);
    /// One sentence for all fields; none when nothing differs.
    void changed(const Subject& subject, const FieldChanges& fields);
    /// Any other sentence, without its full stop.
    void tell(Change change, const Subject& subject, const std::string& sentence);
    void add(LedgerEntry entry) { entries_.push_back(std::move(entry)); }

    const std::vector<LedgerEntry>& entries() const { return entries_; }

  private:
    LedgerEntry& enter(Change change, const Subject& subject, const std::string& sentence);

    UnitSystem units_;
    std::vector<LedgerEntry> entries_;
};

/// Whether lists of points are equally long and every point is shifted as the first, to within
/// kSlightMove.
bool shifted_alike(std::span<const Vec2> before, std::span<const Vec2> now);

/// The differences in the order in which they are told, with what moved alike, and what hardly
/// moved, told once.
std::vector<Difference> told_together(std::span<const LedgerEntry> entries, UnitSystem units);

} // namespace throwline::plan
