#include "base/file_descriptor.h"
#include "base/text_file.h"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fmt/format.h>
#include <memory>
#include <optional>
#include <sys/stat.h>
#include <unistd.h>
#include <vector>

namespace throwline {

namespace {

namespace fs = std::filesystem;

/// As many links as Linux itself follows before it reports a loop.
constexpr int kMostLinks = 40;

/// Passing names that are tried; only leftovers of crashed programs make more than one needed.
constexpr int kMostNames = 1000;

constexpr mode_t kUsualMode = 0666;

tl::unexpected<Error> cannot_write(const fs::path& path, std::string_view reason) {
    return failure(fmt::format("cannot write {}: {}", path.native(), reason));
}

/// The file at the end of a chain of symbolic links, whether or not it exists yet.
Result<fs::path> end_of_links(const fs::path& path) {
    fs::path end = path;
    for (int links = 0; links <= kMostLinks; ++links) {
        std::error_code error;
        if (!fs::is_symlink(fs::symlink_status(end, error))) {
            return end;
        }
        const fs::path target = fs::read_symlink(end, error);
        if (error) {
            return cannot_write(path, error.message());
        }
        // An absolute target replaces the folder it is joined to.
        end = end.parent_path() / target;
    }
    return cannot_write(path, system_reason(ELOOP));
}

Result<void> write_straight(const fs::path& path, std::string_view bytes) {
    // A pipe without a reader is refused instead of waited for.
    FileDescriptor file{::open(path.c_str(), O_WRONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY)};
    if (!file.is_open()) {
        return cannot_write(path, system_reason(errno));
    }
    const int flags = ::fcntl(file.number(), F_GETFL);
    ::fcntl(file.number(), F_SETFL, flags & ~O_NONBLOCK);
    if (!write_all(file, bytes) || !file.close()) {
        return cannot_write(path, system_reason(errno));
    }
    return {};
}

/// A new file beside the one to be replaced; it removes itself unless it was renamed.
class PassingFile {
  public:
    explicit PassingFile(const fs::path& folder) {
        for (int i = 0; i < kMostNames; ++i) {
            path_ = folder / fmt::format(".throwline-{}-{}", ::getpid(), i);
            const int number =
                ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, kUsualMode);
            if (number >= 0 || errno != EEXIST) {
                file_.emplace(number);
                return;
            }
        }
        file_.emplace(-1);
    }
    ~PassingFile() {
        if (file_->is_open() || unfinished_) {
            ::unlink(path_.c_str());
        }
    }
    PassingFile(const PassingFile&) = delete;
    PassingFile& operator=(const PassingFile&) = delete;

    bool is_open() const { return file_->is_open(); }

    /// Owner and mode of the file that is to be replaced.
    bool take_over(const struct stat& old) {
        // Only root may give a file away; for others the new owner is right already, or the
        // folder's rules decide. The mode comes last because a change of owner may drop bits of it.
        if (::fchown(file_->number(), old.st_uid, old.st_gid) != 0 && errno != EPERM) {
            return false;
        }
        return ::fchmod(file_->number(), old.st_mode & 07777U) == 0;
    }

    /// Each false with errno set.
    bool fill(std::string_view bytes) {
        unfinished_ = true;
        return write_all(*file_, bytes) && ::fsync(file_->number()) == 0 && file_->close();
    }
    bool rename_to(const fs::path& target) {
        unfinished_ = ::rename(path_.c_str(), target.c_str()) != 0;
        return !unfinished_;
    }

  private:
    fs::path path_;
    std::optional<FileDescriptor> file_;
    bool unfinished_ = false;
};

fs::path folder_of(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path{"."};
}

/// Makes the new name last. By now the new file is in place, so there is nothing to take back where
/// a file system cannot do this.
void force_folder(const fs::path& folder) {
    const FileDescriptor file{::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
    if (file.is_open()) {
        ::fsync(file.number());
    }
}

/// A file whose bytes are on the disk under a passing name, or that takes them straight.
struct Ready {
    fs::path path;
    fs::path target;
    /// Null for a device or pipe.
    std::unique_ptr<PassingFile> passing;
    std::string_view bytes;
};

Result<Ready> beside(const fs::path& path, const fs::path& target, const struct stat* old,
                     std::string_view bytes) {
    auto passing = std::make_unique<PassingFile>(folder_of(target));
    const bool done =
        passing->is_open() && (old == nullptr || passing->take_over(*old)) && passing->fill(bytes);
    if (!done) {
        return cannot_write(path, system_reason(errno));
    }
    return Ready{path, target, std::move(passing), bytes};
}

Result<Ready> made_ready(const NewFile& file) {
    const fs::path& path = file.path;
    struct stat old{};
    const bool exists = ::stat(path.c_str(), &old) == 0;
    if (exists && S_ISDIR(old.st_mode)) {
        return cannot_write(path, "it is a folder");
    }
    if (exists && !S_ISREG(old.st_mode)) {
        return Ready{path, path, nullptr, file.bytes};
    }
    if (exists && ::access(path.c_str(), W_OK) != 0) {
        return cannot_write(path, system_reason(errno));
    }
    const Result<fs::path> target = end_of_links(path);
    if (!target) {
        return tl::unexpected{target.error()};
    }
    if (!target->has_filename()) {
        return cannot_write(path, path.empty() ? "the name is empty" : "it names a folder");
    }
    return beside(path, *target, exists ? &old : nullptr, file.bytes);
}

Result<void> put_in_place(Ready& ready) {
    if (ready.passing == nullptr) {
        return write_straight(ready.path, ready.bytes);
    }
    if (!ready.passing->rename_to(ready.target)) {
        return cannot_write(ready.path, system_reason(errno));
    }
    force_folder(folder_of(ready.target));
    return {};
}

} // namespace

Result<void> write_file_whole(const fs::path& path, std::string_view bytes) {
    return write_files_whole(std::array{NewFile{path, bytes}});
}

Result<void> write_files_whole(std::span<const NewFile> files) {
    std::vector<Ready> all;
    for (const NewFile& file : files) {
        Result<Ready> ready = made_ready(file);
        if (!ready) {
            return tl::unexpected{ready.error()};
        }
        all.push_back(std::move(*ready));
    }
    for (Ready& ready : all) {
        if (const auto done = put_in_place(ready); !done) {
            return done;
        }
    }
    return {};
}

} // namespace throwline
