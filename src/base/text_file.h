#pragma once

#include "base/result.h"

#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>

namespace throwline {

// Errors here are one sentence that names the path and gives the system's reason; the place is
// empty.

/// The bytes of a regular file, or of standard input for "-". Anything else that can stand under a
/// name (folder, pipe, device) is refused, so that nothing waits for ever or has no end. More than
/// `max_bytes` is refused by the size before reading, and again while reading in case the file
/// grows.
Result<std::string> read_text_file(const std::filesystem::path& path, std::uintmax_t max_bytes);

/// Replaces or creates a file so that at any moment, also after a crash, there is the old file or
/// the new one and nothing between: written beside it under a passing name, forced to the disk,
/// renamed. A symbolic link stays and its target is replaced; the mode of an existing file is kept,
/// a new one gets the usual mode. Other names (hard links) of an existing file keep the old bytes.
/// Refused: folders, files without write permission. A device or pipe, such as /dev/stdout, cannot
/// be replaced and is written straight. On any error the old file is whole and nothing is left
/// beside it.
Result<void> write_file_whole(const std::filesystem::path& path, std::string_view bytes);

/// A file to be written, and all that is to be in it.
struct NewFile {
    std::filesystem::path path;
    std::string_view bytes;
};
/// The same for several: all of them are on the disk under passing names before the first takes its
/// place, so that where there is no room for one, none is replaced.
Result<void> write_files_whole(std::span<const NewFile> files);

} // namespace throwline
