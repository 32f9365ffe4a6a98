#pragma once

#include <string>

namespace throwline::survey {

/// A text in quotes as a recce has it, with \" \\ and \n for a quote, a backslash and a line end.
std::string recce_quoted(const std::string& text);
/// A name as it stands in a recce: in quotes where it needs them.
std::string recce_name(const std::string& name);

} // namespace throwline::survey
