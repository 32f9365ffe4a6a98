#pragma once

#include "catalogue/json_document.h"

#include <string>
#include <string_view>

namespace throwline::plan {

/// A JSON value as text on one line, numbers exactly as they were written.
std::string json_text(const catalogue::JsonNode& node);
/// A JSON string with its quotation marks; UTF-8 is left as it is.
std::string json_string(std::string_view text);

} // namespace throwline::plan
