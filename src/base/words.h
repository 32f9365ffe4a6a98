#pragma once

#include "base/quantity.h"

#include <span>
#include <string>
#include <string_view>

/// How sentences of every room name things and figures, so that all of them say it alike.
namespace throwline {

/// "shot 1A", "beat 2", "lamp 4", "camera B": the kind is put before a name that does not say it
/// already ("camera 1" stays as it is).
std::string with_kind(std::string_view kind, std::string_view name);
/// "1 lamp", "3 lamps".
std::string counted(int count, std::string_view noun);
/// "a", "a and b", "a, b and c".
std::string listed(std::span<const std::string> parts);
/// With a capital first letter, to begin a sentence. Letters beyond ASCII stay as they are.
std::string capitalised(std::string text);

/// "37 %"; one decimal below 10 %, two below 1 %: "3.4 %", "0.25 %"; "under 0.01 %".
std::string share_text(double share);
/// "28 mm", "8.5 mm": one decimal where it is not whole.
std::string focal_text(Length focal);
/// "T2.8", "T11".
std::string stop_text(double stop);

} // namespace throwline
