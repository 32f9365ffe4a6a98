#pragma once

#include <compare>
#include <string>

namespace throwline::plan {

/// The name of one thing in a plan, typed by what it names. Names are what the crew says ("camera
/// 1", "back wall"); things of one kind have different names, and so have all things that can be
/// aimed at (people, cameras, lamps, scenery, booms).
template <class Thing>
struct Id {
    std::string name;

    bool empty() const { return name.empty(); }
    auto operator<=>(const Id&) const = default;
};

} // namespace throwline::plan
