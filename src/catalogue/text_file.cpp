#include "catalogue/text_file.h"

#include <fmt/format.h>
#include <fstream>

namespace throwline::catalogue {

namespace fs = std::filesystem;

namespace {

/// Empty when the file may be opened.
std::string refusal(const fs::path& file) {
    std::error_code code;
    const fs::file_status status = fs::status(file, code);
    if (status.type() == fs::file_type::not_found) {
        return "there is no such file";
    }
    if (status.type() == fs::file_type::directory) {
        return "this is a folder, not a file";
    }
    if (code) {
        return "the file cannot be looked at: " + code.message();
    }
    return fs::is_regular_file(status) ? "" : "this is not an ordinary file";
}

} // namespace

Result<std::string> read_text_file(const fs::path& file, std::size_t largest) {
    const Place place{file.string(), "", 0, 0};
    if (std::string reason = refusal(file); !reason.empty()) {
        return failure(std::move(reason), place);
    }
    std::ifstream stream{file, std::ios::binary};
    std::string text;
    constexpr std::size_t kBlock = 65536;
    // Counted while reading, because a file may grow and some report no size.
    while (stream && text.size() <= largest) {
        const std::size_t before = text.size();
        text.resize(before + kBlock);
        stream.read(text.data() + before, static_cast<std::streamsize>(kBlock));
        text.resize(before + static_cast<std::size_t>(stream.gcount()));
    }
    if (text.size() > largest) {
        return failure(fmt::format("the file is larger than {} bytes", largest), place);
    }
    if (!stream.eof()) {
        return failure("the file cannot be read", place);
    }
    return text;
}

} // namespace throwline::catalogue
