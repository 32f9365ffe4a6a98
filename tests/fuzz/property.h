#pragma once

#include "base/result.h"

#include <stdexcept>
#include <string>
#include <string_view>

namespace throwline::fuzz {

/// A property did not hold: libFuzzer takes the uncaught exception for a crash, the fixed share
/// reports it.
class PropertyBroken : public std::logic_error {
    using std::logic_error::logic_error;
};

void require(bool holds, std::string_view property);

/// What every refusal owes the user: at least one error, each with a sentence, on one line, in
/// valid UTF-8 and without control characters, which would reach a terminal.
void require_readable(const Errors& errors);

} // namespace throwline::fuzz
