#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace throwline {

/// Where in somebody's input something is wrong. Parts that do not apply are empty or 0.
struct Place {
    std::string file;
    /// RFC 6901 JSON pointer, such as "/lamps/3/hang".
    std::string pointer;
    /// Both counted from 1.
    int line = 0;
    int column = 0;

    bool operator==(const Place&) const = default;
};

/// Something a user can cause and can put right. `message` is one plain sentence without the place:
/// what was found, what is allowed, and the nearest valid name where there is one.
struct Error {
    std::string message;
    Place place;

    bool operator==(const Error&) const = default;
};
using Errors = std::vector<Error>;

/// "plan.json:12:8: /lamps/3/hang: message", leaving out what the place does not know. One
/// line whatever the names and texts in it hold: control characters and broken bytes are U+FFFD.
std::string text_of(const Error& error);

/// A value, or why there is none. Only what std::expected has is used, so that it can take over.
template <class T>
using Result = tl::expected<T, Error>;
/// A value, or everything that is wrong with the input it was to be made from.
template <class T>
using Checked = tl::expected<T, Errors>;

inline tl::unexpected<Error> failure(std::string message, Place place = {}) {
    return tl::unexpected<Error>{Error{std::move(message), std::move(place)}};
}

} // namespace throwline
