#include "ui/keeping/recovery_store.h"

#include "base/text_file.h"
#include "base/utf8.h"
#include "plan/read_plan.h"
#include "survey/recce_text.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <ctime>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <sstream>
#include <unistd.h>

namespace throwline::ui {

namespace {

constexpr std::string_view kFirstLine = "throwline work in progress 3";
/// Of entries that know nothing of readings.
constexpr std::string_view kFirstLineBefore = "throwline work in progress 2";
/// A plan, readings, and what tells of them.
constexpr std::uintmax_t kLargestEntryBytes =
    plan::kLargestPlanBytes + survey::kLargestRecceBytes + 100'000;
constexpr std::string_view kSuffix = ".work";

template <class Number>
std::optional<Number> number_in(std::string_view text) {
    Number number{};
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    return fault == std::errc{} && end == text.data() + text.size() ? std::optional{number}
                                                                    : std::nullopt;
}

/// Takes a line off the front.
std::string_view take_line(std::string_view& text) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    return line;
}

/// Takes as many bytes as the line before them says, and the end of their line: they may hold
/// anything, also a line's end.
std::optional<std::string> take_counted(std::string_view& text) {
    const auto bytes = number_in<std::size_t>(take_line(text));
    if (!bytes || text.size() < *bytes) {
        return std::nullopt;
    }
    const std::string taken{text.substr(0, *bytes)};
    text.remove_prefix(*bytes);
    take_line(text);
    return taken;
}

struct Entry {
    Recovery recovery;
    ProcessMark writer;
};

std::optional<Entry> entry_of(std::string_view text) {
    const std::string_view first = take_line(text);
    if (first != kFirstLine && first != kFirstLineBefore) {
        return std::nullopt;
    }
    Entry entry;
    entry.writer.boot = std::string{take_line(text)};
    const auto pid = number_in<std::int64_t>(take_line(text));
    const auto start = number_in<std::uint64_t>(take_line(text));
    const auto at = number_in<std::int64_t>(take_line(text));
    entry.recovery.original_mark = std::string{take_line(text)};
    const auto original = take_counted(text);
    const auto readings = first == kFirstLine ? take_counted(text) : std::string{};
    if (!pid || !start || !at || !original || !readings) {
        return std::nullopt;
    }
    entry.writer.pid = *pid;
    entry.writer.start = *start;
    entry.recovery.kept_at_s = *at;
    entry.recovery.original = std::filesystem::path{*original};
    entry.recovery.readings = *readings;
    entry.recovery.plan_text = std::string{text};
    return entry;
}

/// The system's own files have no size, so they are not read as others are.
std::string system_text(const std::string& path) {
    std::ifstream file{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{file}, {}};
}

std::uint64_t start_of_process(std::int64_t pid) {
    // proc(5): the 22nd field of stat; the second may hold spaces, so count from its bracket.
    const std::string text = system_text(fmt::format("/proc/{}/stat", pid));
    const std::size_t bracket = text.rfind(')');
    if (bracket == std::string::npos) {
        return 0;
    }
    std::istringstream fields{text.substr(bracket + 1)};
    std::string field;
    for (int i = 3; i <= 22 && fields >> field; ++i) {
    }
    return number_in<std::uint64_t>(field).value_or(0);
}

} // namespace

ProcessMark process_mark(std::int64_t pid) {
    std::string boot = system_text("/proc/sys/kernel/random/boot_id");
    boot.erase(std::find(boot.begin(), boot.end(), '\n'), boot.end());
    return {pid, start_of_process(pid), std::move(boot)};
}

RecoveryStore RecoveryStore::of_user() {
    const char* state = std::getenv("XDG_STATE_HOME");
    const char* home = std::getenv("HOME");
    const std::filesystem::path base =
        state != nullptr && *state == '/'  ? std::filesystem::path{state}
        : home != nullptr && *home != '\0' ? std::filesystem::path{home} / ".local" / "state"
                                           : std::filesystem::temp_directory_path();
    return RecoveryStore{base / "throwline" / "recovery"};
}

std::filesystem::path RecoveryStore::place_for(int window) const {
    const ProcessMark mark = process_mark(getpid());
    return folder_ / fmt::format("{}-{}-{}{}", mark.pid, mark.start, window, kSuffix);
}

Result<void> RecoveryStore::keep(const std::filesystem::path& place,
                                 const Recovery& recovery) const {
    std::error_code fault;
    if (std::filesystem::create_directories(folder_, fault)) {
        std::filesystem::permissions(folder_, std::filesystem::perms::owner_all, fault);
    } else if (fault) {
        return failure(
            fmt::format("cannot make the folder {}: {}", folder_.native(), fault.message()));
    }
    const ProcessMark mark = process_mark(getpid());
    const std::string path = recovery.original.string();
    return write_file_whole(
        place, fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}", kFirstLine, mark.boot,
                           mark.pid, mark.start, static_cast<std::int64_t>(std::time(nullptr)),
                           recovery.original_mark, path.size(), path, recovery.readings.size(),
                           recovery.readings, recovery.plan_text));
}

void RecoveryStore::drop(const std::filesystem::path& place) const {
    std::error_code ignored;
    std::filesystem::remove(place, ignored);
}

std::vector<Recovery> RecoveryStore::left_behind(std::vector<std::string>& remarks) const {
    std::vector<Recovery> left;
    std::error_code fault;
    for (std::filesystem::directory_iterator file{folder_, fault}, end; !fault && file != end;
         file.increment(fault)) {
        if (file->path().extension() != kSuffix) {
            continue;
        }
        const auto text = read_text_file(file->path(), kLargestEntryBytes);
        std::optional<Entry> entry = text ? entry_of(*text) : std::nullopt;
        if (!entry) {
            remarks.push_back(
                fmt::format("{} holds no work that can be read; it is left where it is",
                            on_one_line(file->path().string())));
            continue;
        }
        if (entry->writer.start != 0 && process_mark(entry->writer.pid) == entry->writer) {
            continue;
        }
        // Saved, but killed before it could say so.
        if (entry->recovery.readings.empty()
            && read_text_file(entry->recovery.original, plan::kLargestPlanBytes)
                   == entry->recovery.plan_text) {
            drop(file->path());
            continue;
        }
        entry->recovery.kept = file->path();
        left.push_back(std::move(entry->recovery));
    }
    std::sort(left.begin(), left.end(), [](const Recovery& a, const Recovery& b) {
        return std::pair{-a.kept_at_s, a.kept} < std::pair{-b.kept_at_s, b.kept};
    });
    return left;
}

} // namespace throwline::ui
