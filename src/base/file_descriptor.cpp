#include "base/file_descriptor.h"

#include <cerrno>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace throwline {

FileDescriptor::~FileDescriptor() {
    if (is_open()) {
        ::close(number_);
    }
}

bool FileDescriptor::close() {
    return ::close(std::exchange(number_, -1)) == 0;
}

std::string system_reason(int error_number) {
    return std::generic_category().message(error_number);
}

bool write_all(const FileDescriptor& file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file.number(), bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR) {
            return false;
        }
        bytes.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
    }
    return true;
}

} // namespace throwline
