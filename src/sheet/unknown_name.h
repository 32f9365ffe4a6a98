#pragma once

#include "base/nearest_name.h"
#include "base/result.h"

#include <fmt/format.h>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::sheet {

/// "there is no paper "A9"; nearest is "A0"".
inline tl::unexpected<Error> no_such(std::string_view kind, std::string_view name,
                                     const std::vector<std::string>& names) {
    const std::string nearest = nearest_name(name, names);
    return failure(
        fmt::format("there is no {} \"{}\"{}", kind, name,
                    nearest.empty() ? std::string{} : fmt::format("; nearest is \"{}\"", nearest)));
}

template <class Things, class NameOf>
std::vector<std::string> names_of(const Things& things, NameOf name_of_thing) {
    std::vector<std::string> names;
    for (const auto& thing : things) {
        names.emplace_back(name_of_thing(thing));
    }
    return names;
}

} // namespace throwline::sheet
