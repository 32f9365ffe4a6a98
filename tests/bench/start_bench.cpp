/// Times what somebody waits for: the window from the start of its process, and a plan from being
/// opened to its first paint, its finished picture and its findings. Each figure is of a process of
/// its own, which goes the way of the program with the given arguments; the clock starts before it
/// is made. Without a screen unless QT_QPA_PLATFORM names one. Give plans as arguments for others
/// than the demos.

#include "command/run.h"
#include "ui/window/window.h"

#include <QApplication>
#include <QTimer>
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

namespace throwline::ui {
namespace {

constexpr int kRuns = 9;
/// What the child is told by its surroundings, so that its arguments are those of the program.
constexpr const char* kBegan_ns = "THROWLINE_BENCH_BEGAN_NS";
constexpr const char* kOpens = "THROWLINE_BENCH_OPENS";
constexpr std::array kWaits{"first paint", "picture", "findings"};

std::int64_t now_ns() {
    const auto since_boot = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::nanoseconds>(since_boot).count();
}

/// Watches the first window of this process, and tells on standard output when what was waited for
/// has come: a line for each, its name and its milliseconds.
class Watch : public QObject {
  public:
    Watch() {
        const char* began = std::getenv(kBegan_ns);
        began_ns_ = began == nullptr ? 0 : std::atoll(began);
        const char* opens = std::getenv(kOpens);
        opens_ = opens == nullptr ? QString{} : QString::fromLocal8Bit(opens);
    }

    bool eventFilter(QObject* watched, QEvent* event) override {
        auto* widget = event->type() == QEvent::Paint ? qobject_cast<QWidget*>(watched) : nullptr;
        auto* window = widget == nullptr ? nullptr : qobject_cast<Window*>(widget->window());
        if (window != nullptr && !is_waiting_) {
            is_waiting_ = true;
            // What is painted with it is painted in one go, and shown before the next event.
            QTimer::singleShot(0, this, [this, window] { was_painted(*window); });
        }
        return QObject::eventFilter(watched, event);
    }

  private:
    void was_painted(Window& window) {
        is_waiting_ = false;
        if (!opens_.isEmpty()) {
            begin(window);
        } else if (!is_asked_) {
            look(window);
        }
    }
    void look(Window& window) {
        tell(0);
        if (window.has_plan() && window.floor().is_up_to_date()) {
            tell(1);
        }
        if (window.desk().analysis() != nullptr) {
            tell(2);
        }
        const bool is_all = std::find(is_told_.begin(), is_told_.end(), false) == is_told_.end();
        if (is_all || !window.has_plan()) {
            std::fflush(stdout);
            _exit(0);
        }
        if (!is_listening_) {
            is_listening_ = true;
            connect(&window.desk(), &Desk::analysis_changed, this, [this, &window] {
                QTimer::singleShot(0, this, [this, &window] { look(window); });
            });
        }
    }
    /// Opens a plan in the window that stands there, as somebody who chose it.
    void begin(Window& window) {
        const QString plan = opens_;
        opens_.clear();
        is_asked_ = true;
        // Not while the window is still busy with its own beginning.
        QTimer::singleShot(300, &window, [this, plan, &window] {
            is_asked_ = false;
            began_ns_ = now_ns();
            window.open(plan);
        });
    }
    void tell(std::size_t wait) {
        if (!is_told_[wait]) {
            is_told_[wait] = true;
            fmt::print("{}\t{}\n", kWaits[wait], static_cast<double>(now_ns() - began_ns_) / 1e6);
        }
    }

    std::int64_t began_ns_ = 0;
    QString opens_;
    /// Something was painted and is about to be shown.
    bool is_waiting_ = false;
    /// A plan is to be opened in a moment.
    bool is_asked_ = false;
    bool is_listening_ = false;
    std::array<bool, kWaits.size()> is_told_{};
};

void watch() {
    if (std::getenv(kBegan_ns) != nullptr) {
        QCoreApplication::instance()->installEventFilter(new Watch);
    }
}
Q_COREAPP_STARTUP_FUNCTION(watch)

using Figures = std::map<std::string, std::vector<double>>;

/// A home of its own, so that no other program is asked and nothing of the user's is touched.
class Home {
  public:
    Home() : folder_{std::filesystem::temp_directory_path() / fmt::format("bench-{}", getpid())} {
        std::filesystem::create_directories(folder_);
        std::filesystem::permissions(folder_, std::filesystem::perms::owner_all);
        for (const char* name : {"HOME", "TMPDIR", "XDG_CONFIG_HOME", "XDG_STATE_HOME",
                                 "XDG_DATA_HOME", "XDG_RUNTIME_DIR"}) {
            setenv(name, folder_.c_str(), 1);
        }
    }
    ~Home() { std::filesystem::remove_all(folder_); }
    /// A copy of a plan, so that no lock is left beside the plan itself.
    std::string copy_of(const std::filesystem::path& plan) const {
        const std::filesystem::path copy = folder_ / plan.filename();
        std::filesystem::copy_file(plan, copy, std::filesystem::copy_options::overwrite_existing);
        return copy.string();
    }
    Home(const Home&) = delete;
    Home& operator=(const Home&) = delete;

  private:
    std::filesystem::path folder_;
};

std::string output_of_child(const std::string& plan_at_start, const std::string& plan_later) {
    int ends[2];
    if (pipe(ends) != 0) {
        return {};
    }
    const std::string began = std::to_string(now_ns());
    const pid_t child = fork();
    if (child == 0) {
        dup2(ends[1], STDOUT_FILENO);
        // The platform without a screen complains about every window.
        setenv("QT_LOGGING_RULES", "default.warning=false", 0);
        close(ends[0]);
        setenv(kBegan_ns, began.c_str(), 1);
        if (!plan_later.empty()) {
            setenv(kOpens, plan_later.c_str(), 1);
        }
        execl("/proc/self/exe", "throwline", "open",
              plan_at_start.empty() ? nullptr : plan_at_start.c_str(), nullptr);
        _exit(9);
    }
    close(ends[1]);
    std::string output;
    std::array<char, 256> piece{};
    for (ssize_t count = 0; (count = read(ends[0], piece.data(), piece.size())) > 0;) {
        output.append(piece.data(), static_cast<std::size_t>(count));
    }
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    return output;
}

void time_runs(const std::string& what, const std::string& plan_at_start,
               const std::string& plan_later) {
    Figures figures;
    for (int run = 0; run < kRuns; ++run) {
        std::istringstream lines{output_of_child(plan_at_start, plan_later)};
        for (std::string line; std::getline(lines, line);) {
            const std::size_t tab = line.find('\t');
            if (tab != std::string::npos) {
                figures[line.substr(0, tab)].push_back(std::strtod(line.c_str() + tab, nullptr));
            }
        }
    }
    for (const char* wait : kWaits) {
        std::vector<double>& took_ms = figures[wait];
        if (!took_ms.empty()) {
            std::sort(took_ms.begin(), took_ms.end());
            fmt::print("{:<32} {:<12} median {:7.1f} ms   best {:7.1f} ms   worst {:7.1f} ms\n",
                       what, wait, took_ms[took_ms.size() / 2], took_ms.front(), took_ms.back());
        }
    }
    std::fflush(stdout);
}

void run(const std::vector<std::string>& plans) {
    const Home home;
    time_runs("start", {}, {});
    for (const std::string& plan : plans) {
        const std::string name = std::filesystem::path{plan}.stem().string();
        const std::string copy = home.copy_of(plan);
        time_runs("start with " + name, copy, {});
        time_runs("open " + name, {}, copy);
    }
}

} // namespace
} // namespace throwline::ui

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv + 1, argv + argc);
    setenv("QT_QPA_PLATFORM", "offscreen", 0);
    setenv("THROWLINE_LENSDATA", THROWLINE_SOURCE_DIR "/lensdata", 0);
    if (std::getenv(throwline::ui::kBegan_ns) != nullptr) {
        return throwline::command::run(arguments, {std::cin, std::cout, std::cerr});
    }
    throwline::ui::run(!arguments.empty() ? arguments
                                          : std::vector<std::string>{
                                                THROWLINE_SOURCE_DIR "/demo/cookery.json",
                                                THROWLINE_SOURCE_DIR "/demo/market_hall.json"});
    return 0;
}
