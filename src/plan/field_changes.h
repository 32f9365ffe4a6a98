#pragma once

#include "base/length_text.h"
#include "plan/names.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::plan {

/// Phrases about the fields of one thing that differ: "level from 80 % to 60 %", "finish now
/// plywood", "circuit no longer C1". Fields that are equal say nothing; unequal ones always do.
class FieldChanges {
  public:
    explicit FieldChanges(UnitSystem units) : units_{units} {}

    void name(std::string_view what, const std::string& before, const std::string& now);
    /// Free text, told in quotes and cut where it is long.
    void text(std::string_view what, const std::string& before, const std::string& now);
    void length(std::string_view what, const std::optional<Length>& before,
                const std::optional<Length>& now);
    /// Millimetres in either system of units.
    void focal(std::string_view what, const std::optional<Length>& before,
               const std::optional<Length>& now);
    void share(std::string_view what, double before, double now);
    void number(std::string_view what, const std::optional<double>& before,
                const std::optional<double>& now, std::string_view unit = "");
    /// Kilograms, told in pounds where the plan is in feet and inches.
    void mass(std::string_view what, const std::optional<double>& before_kg,
              const std::optional<double>& now_kg);
    void angle(std::string_view what, const std::optional<Angle>& before,
               const std::optional<Angle>& now);
    /// Says `when_set` or `when_not`, whichever it is now.
    void flag(bool before, bool now, std::string_view when_set, std::string_view when_not);
    void list(std::string_view what, const std::vector<std::string>& before,
              const std::vector<std::string>& now);
    void lengths(std::string_view what, const std::vector<Length>& before,
                 const std::vector<Length>& now);
    /// Texts too long for a list: tells those that came and went.
    void notes(const std::vector<std::string>& before, const std::vector<std::string>& now);
    void extra(const Extra& before, const Extra& now);
    /// A phrase that says it all.
    void say(std::string phrase) { phrases_.push_back(std::move(phrase)); }

    template <class Choice>
    void choice(std::string_view what, Choice before, Choice now) {
        name(what, std::string{name_of(before)}, std::string{name_of(now)});
    }
    template <class Thing>
    void id(std::string_view what, const Id<Thing>& before, const Id<Thing>& now) {
        name(what, before.name, now.name);
    }
    template <class Thing>
    void ids(std::string_view what, const std::vector<Id<Thing>>& before,
             const std::vector<Id<Thing>>& now) {
        list(what, names_in(before), names_in(now));
    }

    const std::vector<std::string>& phrases() const { return phrases_; }

  private:
    /// A value as it is shown, and so that no other value has the same text.
    struct Told {
        std::string shown;
        std::string exact;
    };
    void from_to(std::string_view what, const Told& before, const Told& now);
    Told told(const std::optional<Length>& length) const;

    template <class Thing>
    static std::vector<std::string> names_in(const std::vector<Id<Thing>>& ids) {
        std::vector<std::string> names;
        for (const Id<Thing>& id : ids) {
            names.push_back(id.name);
        }
        return names;
    }

    UnitSystem units_;
    std::vector<std::string> phrases_;
};

} // namespace throwline::plan
