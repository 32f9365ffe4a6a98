#include "ui/keeping/recovery_store.h"

#include "base/text_file.h"
#include "plan/read_plan.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <ctime>
#include <fmt/format.h>
#include <sstream>
#include <unistd.h>

namespace throwline::ui {

namespace {

constexpr std::string_view kFirstLine = "throwline work in progress 1";
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

struct Entry {
    Recovery recovery;
    std::int64_t pid = 0;
    std::uint64_t start = 0;
};

std::optional<Entry> entry_of(std::string_view text) {
    if (take_line(text) != kFirstLine) {
        return std::nullopt;
    }
    const auto pid = number_in<std::int64_t>(take_line(text));
    const auto start = number_in<std::uint64_t>(take_line(text));
    const auto at = number_in<std::int64_t>(take_line(text));
    const auto bytes = number_in<std::size_t>(take_line(text));
    // A path may hold anything, also a line's end, so its length stands before it.
    if (!pid || !start || !at || !bytes || text.size() < *bytes) {
        return std::nullopt;
    }
    Entry entry;
    entry.pid = *pid;
    entry.start = *start;
    entry.recovery.kept_at_s = *at;
    entry.recovery.original = std::filesystem::path{std::string{text.substr(0, *bytes)}};
    text.remove_prefix(*bytes);
    take_line(text);
    entry.recovery.plan_text = std::string{text};
    return entry;
}

} // namespace

std::uint64_t start_of_process(std::int64_t pid) {
    // proc(5): the 22nd field of stat; the second may hold spaces, so count from its bracket.
    const auto text = read_text_file(fmt::format("/proc/{}/stat", pid), std::uintmax_t{64} * 1024);
    const std::size_t bracket = text ? text->rfind(')') : std::string::npos;
    if (bracket == std::string::npos) {
        return 0;
    }
    std::istringstream fields{text->substr(bracket + 1)};
    std::string field;
    for (int i = 3; i <= 22 && fields >> field; ++i) {
    }
    return number_in<std::uint64_t>(field).value_or(0);
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
    std::error_code ignored;
    std::filesystem::create_directories(folder_, ignored);
    const auto pid = static_cast<std::int64_t>(getpid());
    return folder_ / fmt::format("{}-{}-{}{}", pid, start_of_process(pid), window, kSuffix);
}

Result<void> RecoveryStore::keep(const std::filesystem::path& place,
                                 const std::filesystem::path& original,
                                 const std::string& plan_text) const {
    std::error_code ignored;
    std::filesystem::create_directories(folder_, ignored);
    const auto pid = static_cast<std::int64_t>(getpid());
    const std::string path = original.string();
    return write_file_whole(place, fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}", kFirstLine, pid,
                                               start_of_process(pid),
                                               static_cast<std::int64_t>(std::time(nullptr)),
                                               path.size(), path, plan_text));
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
        const auto text = read_text_file(file->path(), plan::kLargestPlanBytes + 100'000);
        std::optional<Entry> entry = text ? entry_of(*text) : std::nullopt;
        if (!entry) {
            remarks.push_back(
                fmt::format("{} holds no work that can be read", file->path().filename().string()));
            continue;
        }
        if (entry->start != 0 && start_of_process(entry->pid) == entry->start) {
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
