#pragma once

#include "edit/make.h"
#include "edit/thing.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace throwline::edit {

/// Names of one sort that can be said, and what they are names of. Keys are folded; `shown` are
/// the names as they are written, in the order in which they are offered.
template <class Meaning>
struct Names {
    std::map<std::string, Meaning> by_name;
    std::vector<std::string> shown;
    /// Words in the longest of them.
    std::size_t longest = 1;
};

/// Everything that a sentence about a plan may name.
struct Vocabulary {
    /// Things by their names, with or without their kind ("lamp 3", "3"), lamps by their roles
    /// ("key"), all of a kind ("all lamps"), and what is chosen ("it", "them").
    Names<std::vector<Thing>> things;
    Names<plan::Id<plan::Beat>> beats;
    Names<plan::Id<plan::Shot>> shots;
    Names<plan::Id<plan::Circuit>> circuits;
    /// What the Stores hold.
    Names<StoreItem> items;
};

Vocabulary vocabulary(const Context& context, std::span<const Thing> chosen);

} // namespace throwline::edit
