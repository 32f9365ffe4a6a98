#pragma once

#include "plan/reading.h"

#include <functional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace throwline::plan {

/// Names that something may be called by, and what they are names of.
class KnownNames {
  public:
    explicit KnownNames(std::string_view kind) : kind_{kind} {}
    KnownNames(KnownNames&&) = default;
    KnownNames& operator=(KnownNames&&) = default;

    void add(const std::string& name);
    bool has(const std::string& name) const { return names_.count(name) > 0; }
    /// `no person is called "poter"; nearest is "potter"`
    std::string complaint(const std::string& name) const;
    /// Reports a name that nothing has. Empty names are left out or have been reported.
    void expect(Reading& reading, const Value& value, const std::string& name) const;

  private:
    std::string_view kind_;
    /// Looked up only; an edit on a crowded plan asks for thousands.
    std::unordered_set<std::string> names_;
    /// Of names_, as they were added.
    std::vector<const std::string*> in_order_;
};

template <class Thing>
KnownNames known_ids(std::string_view kind, const std::vector<Thing>& things) {
    KnownNames names{kind};
    for (const Thing& thing : things) {
        names.add(thing.id.name);
    }
    return names;
}

/// Each thing of a list with the item under a key that it was read from; with the nearest value
/// around it when it came from elsewhere.
template <class Thing, class Visit>
void each(const Value& root, std::string_view key, const std::vector<Thing>& things,
          const Visit& visit) {
    const Value list = root.at(key);
    for (std::size_t i = 0; i < things.size(); ++i) {
        visit(list.item(i), things[i]);
    }
}

} // namespace throwline::plan
