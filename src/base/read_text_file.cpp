#include "base/file_descriptor.h"
#include "base/text_file.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace throwline {

namespace {

constexpr std::size_t kBlock_bytes = std::size_t{64} * 1024;

tl::unexpected<Error> cannot_read(std::string_view name, std::string_view reason) {
    return failure(fmt::format("cannot read {}: {}", name, reason));
}

tl::unexpected<Error> too_large(std::string_view name, std::uintmax_t max_bytes) {
    return cannot_read(name, fmt::format("it is larger than {} bytes", max_bytes));
}

/// Reads to the end, but not past the limit.
Result<std::string> read_all(int descriptor, std::string_view name, std::uintmax_t max_bytes) {
    std::string text;
    std::array<char, kBlock_bytes> block{};
    for (;;) {
        const ssize_t count = ::read(descriptor, block.data(), block.size());
        if (count == 0) {
            return text;
        }
        if (count < 0) {
            if (errno == EINTR) {
                continue;
            }
            return cannot_read(name, system_reason(errno));
        }
        const auto size = static_cast<std::size_t>(count);
        if (size > max_bytes - text.size()) {
            return too_large(name, max_bytes);
        }
        text.append(block.data(), size);
    }
}

} // namespace

Result<std::string> read_text_file(const std::filesystem::path& path, std::uintmax_t max_bytes) {
    if (path == "-") {
        return read_all(STDIN_FILENO, "the standard input", max_bytes);
    }
    // Without O_NONBLOCK, opening a pipe that nobody writes to would wait for ever.
    const FileDescriptor file{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    struct stat status{};
    if (!file.is_open() || ::fstat(file.number(), &status) != 0) {
        return cannot_read(path.native(), system_reason(errno));
    }
    if (S_ISDIR(status.st_mode)) {
        return cannot_read(path.native(), "it is a folder");
    }
    if (!S_ISREG(status.st_mode)) {
        return cannot_read(path.native(), "it is not a regular file");
    }
    if (static_cast<std::uintmax_t>(status.st_size) > max_bytes) {
        return too_large(path.native(), max_bytes);
    }
    return read_all(file.number(), path.native(), max_bytes);
}

} // namespace throwline
