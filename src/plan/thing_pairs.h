#pragma once

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>
#include <vector>

namespace throwline::plan {

/// Which things of an older and a newer list are the same: indices, in the order of the newer list;
/// those that have gone or come in the order of their own.
struct ThingPairs {
    std::vector<std::pair<std::size_t, std::size_t>> both;
    std::vector<std::size_t> gone;
    std::vector<std::size_t> come;
};

/// Pairs things that have the same key; several with one key in order, so that nothing is lost.
template <class Thing, class KeyOf>
ThingPairs paired(const std::vector<Thing>& old, const std::vector<Thing>& now,
                  const KeyOf& key_of) {
    using Key = decltype(key_of(old.front()));
    std::map<Key, std::vector<std::size_t>> waiting;
    for (std::size_t i = old.size(); i-- > 0;) {
        waiting[key_of(old[i])].push_back(i);
    }
    ThingPairs pairs;
    std::vector<bool> found(old.size(), false);
    for (std::size_t i = 0; i < now.size(); ++i) {
        const auto same = waiting.find(key_of(now[i]));
        if (same == waiting.end() || same->second.empty()) {
            pairs.come.push_back(i);
            continue;
        }
        pairs.both.emplace_back(same->second.back(), i);
        found[same->second.back()] = true;
        same->second.pop_back();
    }
    for (std::size_t i = 0; i < old.size(); ++i) {
        if (!found[i]) {
            pairs.gone.push_back(i);
        }
    }
    return pairs;
}

template <class Thing>
ThingPairs paired_by_id(const std::vector<Thing>& old, const std::vector<Thing>& now) {
    return paired(old, now, [](const Thing& thing) { return thing.id.name; });
}

/// Items of `list` that `other` does not have, each counted; in the order of the list.
template <class Item>
std::vector<Item> only_in(const std::vector<Item>& list, std::vector<Item> other) {
    std::vector<Item> items;
    for (const Item& item : list) {
        const auto found = std::find(other.begin(), other.end(), item);
        if (found == other.end()) {
            items.push_back(item);
        } else {
            other.erase(found);
        }
    }
    return items;
}

/// Those of `both` that must be taken out so that the rest stand in the same order in both lists,
/// as few as can be; in the order of the newer list.
std::vector<std::size_t> out_of_order(const ThingPairs& pairs);

} // namespace throwline::plan
