#pragma once

#include "base/result.h"

#include <cstddef>
#include <filesystem>
#include <string>

namespace throwline::catalogue {

/// 32 MiB: far above any real plan or table, far below what would hurt a small machine.
inline constexpr std::size_t kLargestTextFile = 32U * 1024U * 1024U;

/// The bytes of a regular file. Refused with a reason: a missing file, a directory, a pipe or
/// device, more than `largest` bytes, a read that fails. The place of an error is the file.
Result<std::string> read_text_file(const std::filesystem::path& file,
                                   std::size_t largest = kLargestTextFile);

} // namespace throwline::catalogue
