#include "ui/paint/pdf_page.h"

#include "base/file_descriptor.h"
#include "ui/paint/read_picture.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <fcntl.h>
#include <fmt/format.h>
#include <optional>
#include <poll.h>
#include <spawn.h>
#include <string>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace throwline::paint {

namespace {

/// Enough for a scanned A0 sheet on a slow machine; a document that loops is ended.
constexpr rlim_t kSeconds = 60;
constexpr rlim_t kMemory_bytes = rlim_t{2} * 1024 * 1024 * 1024;
constexpr std::string_view kMagic = "P6\n";

tl::unexpected<Error> cannot_draw(const std::filesystem::path& path, std::string_view why) {
    return failure(fmt::format("cannot use {} as a picture: {}", path.native(), why));
}

/// The document, open, when it is a regular file of a bearable size.
Result<void> fit_to_read(const FileDescriptor& file, const std::filesystem::path& path) {
    struct stat status{};
    if (!file.is_open() || ::fstat(file.number(), &status) != 0) {
        return cannot_draw(path, system_reason(errno));
    }
    if (!S_ISREG(status.st_mode)) {
        return cannot_draw(path, "it is not a regular file");
    }
    if (static_cast<std::uintmax_t>(status.st_size) > kLargestPictureBytes) {
        return cannot_draw(path, fmt::format("it is larger than {} bytes", kLargestPictureBytes));
    }
    return {};
}

/// A program that reads the document on its standard input and writes the page on its output.
class PageProgram {
  public:
    PageProgram(const FileDescriptor& document, int page) {
        std::array<int, 2> pipe{};
        if (::pipe2(pipe.data(), O_CLOEXEC) != 0) {
            return;
        }
        out_ = pipe[0];
        start(document.number(), pipe[1], page);
        ::close(pipe[1]);
    }
    ~PageProgram() {
        if (process_ > 0) {
            ::kill(process_, SIGKILL);
            wait();
        }
        if (out_ >= 0) {
            ::close(out_);
        }
    }
    PageProgram(const PageProgram&) = delete;
    PageProgram& operator=(const PageProgram&) = delete;

    bool has_started() const { return process_ > 0; }
    int out() const { return out_; }
    /// Whether it ended by itself and without complaint.
    bool wait() {
        int status = 0;
        while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) {
        }
        process_ = 0;
        return WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }

  private:
    void start(int in, int out, int page) {
        std::array<std::string, 10> words{"pdftoppm",
                                          "-r",
                                          std::to_string(kPageDotsPerInch),
                                          "-f",
                                          std::to_string(page),
                                          "-l",
                                          std::to_string(page),
                                          "-singlefile",
                                          "-cropbox",
                                          "-"};
        std::array<char*, words.size() + 1> arguments{};
        for (std::size_t i = 0; i < words.size(); ++i) {
            arguments.at(i) = words.at(i).data();
        }
        posix_spawn_file_actions_t actions;
        ::posix_spawn_file_actions_init(&actions);
        ::posix_spawn_file_actions_adddup2(&actions, in, STDIN_FILENO);
        ::posix_spawn_file_actions_adddup2(&actions, out, STDOUT_FILENO);
        ::posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
        pid_t process = 0;
        if (::posix_spawnp(&process, arguments.front(), &actions, nullptr, arguments.data(),
                           environ)
            == 0) {
            process_ = process;
            const rlimit time{kSeconds, kSeconds};
            const rlimit memory{kMemory_bytes, kMemory_bytes};
            ::prlimit(process, RLIMIT_CPU, &time, nullptr);
            ::prlimit(process, RLIMIT_AS, &memory, nullptr);
        }
        ::posix_spawn_file_actions_destroy(&actions);
    }

    pid_t process_ = 0;
    int out_ = -1;
};

/// "P6", width, height and 255, each ended by white space (netpbm's plain pixel map).
struct PixelMapHead {
    int width = 0;
    int height = 0;
    std::size_t length = 0;
};

std::optional<PixelMapHead> head_of(std::string_view bytes) {
    if (!bytes.starts_with(kMagic)) {
        return std::nullopt;
    }
    PixelMapHead head;
    int depth = 0;
    const char* at = bytes.data() + kMagic.size();
    const char* end = bytes.data() + bytes.size();
    for (int* number : {&head.width, &head.height, &depth}) {
        const auto [next, problem] = std::from_chars(at, end, *number);
        if (problem != std::errc{} || next == end || *number < 1) {
            return std::nullopt;
        }
        at = next + 1;
    }
    head.length = static_cast<std::size_t>(at - bytes.data());
    return depth == 255 ? std::optional{head} : std::nullopt;
}

/// All that comes within the time; nothing when it takes longer or is larger than any page allowed.
std::optional<std::string> all_from(int descriptor) {
    constexpr std::size_t kMost_bytes = 3 * static_cast<std::size_t>(kMostPixels) + 100;
    constexpr int kPatience_ms = static_cast<int>(kSeconds) * 1000;
    std::string bytes;
    std::array<char, 65536> block{};
    for (;;) {
        pollfd waiting{descriptor, POLLIN, 0};
        if (::poll(&waiting, 1, kPatience_ms) == 0) {
            return std::nullopt;
        }
        const ssize_t count = ::read(descriptor, block.data(), block.size());
        if (count == 0) {
            return bytes;
        }
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count < 0 || bytes.size() + static_cast<std::size_t>(count) > kMost_bytes) {
            return std::nullopt;
        }
        bytes.append(block.data(), static_cast<std::size_t>(count));
    }
}

sheet::Pixels pixels_of(const std::string& bytes, const PixelMapHead& head) {
    sheet::Pixels pixels;
    pixels.width = head.width;
    pixels.height = head.height;
    const auto from = bytes.begin() + static_cast<std::ptrdiff_t>(head.length);
    pixels.rgb.assign(from, from + std::ptrdiff_t{3} * head.width * head.height);
    return pixels;
}

} // namespace

Result<sheet::Pixels> drawn_pdf_page(const std::filesystem::path& path, int page) {
    const FileDescriptor file{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    if (const auto fit = fit_to_read(file, path); !fit) {
        return tl::unexpected{fit.error()};
    }
    PageProgram program{file, page};
    if (!program.has_started()) {
        return cannot_draw(path, "pdftoppm, which draws pages of a PDF (package poppler-utils), "
                                 "does not start");
    }
    const std::optional<std::string> bytes = all_from(program.out());
    const auto too_large = [&] {
        return cannot_draw(path, fmt::format("page {} takes too long or has more than {} million "
                                             "pixels at {} dots per inch",
                                             page, kMostPixels / 1'000'000, kPageDotsPerInch));
    };
    if (!bytes) {
        return too_large();
    }
    const bool ended_well = program.wait();
    const std::optional<PixelMapHead> head = head_of(*bytes);
    if (!ended_well || !head) {
        return cannot_draw(path,
                           fmt::format("it is not a PDF with a page {} that can be drawn", page));
    }
    // What is too large for the program itself comes out as a single pixel.
    if (std::min(head->width, head->height) < 2
        || std::int64_t{head->width} * head->height > kMostPixels) {
        return too_large();
    }
    const std::size_t pixels =
        static_cast<std::size_t>(head->width) * static_cast<std::size_t>(head->height);
    if (bytes->size() < head->length + 3 * pixels) {
        return cannot_draw(path, "it is broken or cut off");
    }
    return pixels_of(*bytes, *head);
}

} // namespace throwline::paint
