#include "plan/difference_ledger.h"

#include "base/utf8.h"
#include "base/words.h"
#include "plan/difference_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace throwline::plan {

namespace {

/// Furthest that any point has gone.
double largest_shift_m(std::span<const Vec2> before, std::span<const Vec2> now) {
    double largest = 0.0;
    for (std::size_t i = 0; i < before.size(); ++i) {
        largest = std::max(largest, (now[i] - before[i]).norm());
    }
    return largest;
}

} // namespace

Subject placeless(ThingKind kind, std::string name, std::string said) {
    Subject subject;
    subject.thing.kind = kind;
    subject.thing.name = std::move(name);
    subject.said = std::move(said);
    return subject;
}

bool shifted_alike(std::span<const Vec2> before, std::span<const Vec2> now) {
    if (before.empty() || before.size() != now.size()) {
        return false;
    }
    const Vec2 shift = now[0] - before[0];
    for (std::size_t i = 1; i < before.size(); ++i) {
        if ((now[i] - before[i] - shift).norm() >= kSlightMove.m()) {
            return false;
        }
    }
    return true;
}

LedgerEntry& DifferenceLedger::enter(Change change, const Subject& subject,
                                     const std::string& sentence) {
    LedgerEntry entry;
    entry.difference.change = change;
    entry.difference.things = {subject.thing};
    entry.difference.sentence = capitalised(on_one_line(sentence)) + ".";
    entry.said = subject.said;
    entries_.push_back(std::move(entry));
    return entries_.back();
}

void DifferenceLedger::added(const Subject& subject, const std::string& more) {
    enter(Change::added, subject, fmt::format("{} added{}", subject.said, more));
}

void DifferenceLedger::removed(const Subject& subject, const std::string& more) {
    enter(Change::removed, subject, fmt::format("{} removed{}", subject.said, more));
}

void DifferenceLedger::renamed(const Subject& subject, const std::string& old_said) {
    enter(Change::renamed, subject, fmt::format("{} is now called {}", old_said, subject.said));
}

void DifferenceLedger::moved(const Subject& subject, std::span<const Vec2> before,
                             std::span<const Vec2> now, std::string_view reshaped,
                             const std::string& more) {
    if (std::equal(before.begin(), before.end(), now.begin(), now.end())) {
        return;
    }
    const bool alike = shifted_alike(before, now);
    const double size_m = before.size() == now.size() ? largest_shift_m(before, now) : 0.0;
    const bool slight = before.size() == now.size() && size_m < kSlightMove.m();
    if (!alike && !slight) {
        enter(Change::changed, subject, fmt::format("{} {}", subject.said, reshaped)).size_m =
            size_m;
        return;
    }
    const Vec2 shift = now[0] - before[0];
    LedgerEntry& entry =
        enter(Change::moved, subject,
              fmt::format("{} moved {}{}", subject.said, shift_text(shift, units_), more));
    entry.difference.working = shift_working(shift, units_);
    entry.shift = shift;
    entry.size_m = size_m;
    entry.slight = slight;
}

void DifferenceLedger::raised(const Subject& subject, Length before, Length now) {
    if (before == now) {
        return;
    }
    LedgerEntry& entry = enter(Change::moved, subject,
                               fmt::format("{} {}", subject.said, rise_text(now - before, units_)));
    entry.difference.working = rise_working(before, now, units_);
    entry.size_m = std::abs((now - before).m());
    entry.slight = entry.size_m < kSlightMove.m();
}

void DifferenceLedger::turned(const Subject& subject, Angle before, Angle now) {
    if (before == now) {
        return;
    }
    const double turn_rad = wrapped((now - before).rad());
    LedgerEntry& entry = enter(Change::turned, subject,
                               fmt::format("{} turned {}", subject.said, turn_text(now - before)));
    entry.slight = std::abs(turn_rad) < kSlightTurn.rad();
}

void DifferenceLedger::changed(const Subject& subject, const FieldChanges& fields) {
    if (!fields.phrases().empty()) {
        enter(Change::changed, subject,
              fmt::format("{}: {}", subject.said, fmt::join(fields.phrases(), "; ")));
    }
}

void DifferenceLedger::tell(Change change, const Subject& subject, const std::string& sentence) {
    enter(change, subject, sentence);
}

} // namespace throwline::plan
