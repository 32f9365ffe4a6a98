#pragma once

#include "base/result.h"
#include "catalogue/json_document.h"

#include <string>
#include <string_view>

namespace throwline::plan {

/// What a damaged JSON text still says, and where it could not be made out.
struct MendedJson {
    /// Always an object. Every value has the line and column that it had in the text.
    catalogue::JsonNode tree;
    Errors errors;
};

/// Reads JSON whose text was cut off, or in which bytes were lost, added or changed: what cannot be
/// made out is left out up to the next comma, bracket or line, and lost brackets are taken to stand
/// where the next value can only be one of the parts around. Reads any text, in a time that grows
/// with its length; same text, same result.
MendedJson mended_json(std::string_view text, const std::string& file = {});

} // namespace throwline::plan
