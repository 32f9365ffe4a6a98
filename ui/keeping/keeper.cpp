#include "ui/keeping/keeper.h"

#include "base/file_mark.h"
#include "base/text_file.h"
#include "plan/differences.h"
#include "plan/read_plan.h"
#include "plan/salvage.h"
#include "survey/recce_text.h"
#include "ui/keeping/recovery_writer.h"

#include <QFileSystemWatcher>
#include <QLockFile>
#include <QMetaObject>
#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <vector>

namespace throwline::ui {

namespace {

using namespace std::chrono_literals;

/// Steps that follow each other faster are kept together.
constexpr auto kTogether = 300ms;
/// What could not be kept is tried again after this.
constexpr auto kAgain = 3s;
/// A lock whose program has not been heard of for as long is stale; QLockFile also looks whether
/// the process is there.
constexpr auto kNeverStale = 0ms;
constexpr int kMostSentences = 200;

QString path_text(const std::filesystem::path& path) {
    return QString::fromStdString(path.string());
}

QString file_text(const std::filesystem::path& path) {
    return QString::fromStdString(path.filename().string());
}

/// Beside the file itself, whatever name leads to it.
std::filesystem::path lock_path(const std::filesystem::path& path) {
    std::error_code fault;
    const std::filesystem::path true_path = std::filesystem::weakly_canonical(path, fault);
    const std::filesystem::path& locked = fault ? path : true_path;
    return locked.parent_path() / fmt::format(".{}.lock", locked.filename().string());
}

QStringList sentences_of(const Errors& errors) {
    QStringList sentences;
    for (const Error& error : errors) {
        if (sentences.size() < kMostSentences) {
            sentences << QString::fromStdString(text_of(error));
        }
    }
    return sentences;
}

/// What was left out first, then why.
QStringList sentences_of(const plan::Salvaged& salvaged) {
    QStringList sentences;
    for (const std::string& left_out : salvaged.left_out) {
        sentences << Keeper::tr("Left out: %1").arg(QString::fromStdString(left_out));
    }
    return sentences << sentences_of(salvaged.errors);
}

std::filesystem::path backup_path(std::filesystem::path path) {
    path += "~";
    return path;
}

} // namespace

Keeper::Keeper(Desk& desk, RecoveryStore store, int window, QObject* parent)
    : QObject{parent}, desk_{desk}, store_{std::move(store)}, place_{store_.place_for(window)},
      watcher_{new QFileSystemWatcher{this}} {
    writer_ = std::make_unique<RecoveryWriter>(store_, place_, [this](const std::string& why) {
        QMetaObject::invokeMethod(
            this, [this, why] { tell_not_kept(QString::fromStdString(why)); },
            Qt::QueuedConnection);
    });
    soon_.setSingleShot(true);
    soon_.setInterval(kTogether);
    again_.setSingleShot(true);
    again_.setInterval(kAgain);
    for (const QTimer* timer : {&soon_, &again_}) {
        connect(timer, &QTimer::timeout, this, &Keeper::keep_apart);
    }
    connect(&desk_, &Desk::plan_changed, this, &Keeper::keep_soon);
    connect(watcher_, &QFileSystemWatcher::fileChanged, this, &Keeper::file_changed);
    connect(watcher_, &QFileSystemWatcher::directoryChanged, this, &Keeper::file_changed);
}

Keeper::~Keeper() {
    // Without let_go() the window did not close as it should: what was done stays kept.
    if (!let_go_ && soon_.isActive()) {
        keep_apart();
    }
    writer_->flush();
}

void Keeper::keep_soon() {
    is_told_ = false;
    // Not started anew by each step, so that steps without a pause are kept all the same.
    if (!soon_.isActive()) {
        soon_.start();
    }
}

/// It is tried again until it can be kept; said once a step.
void Keeper::tell_not_kept(const QString& why) {
    if (let_go_ || !has_work()) {
        return;
    }
    again_.start();
    if (!is_told_) {
        is_told_ = true;
        Q_EMIT keeping_failed(
            tr("Not kept for the case of a crash: %1; put that right, or save the plan").arg(why));
    }
}

void Keeper::keep_readings(std::string readings) {
    if (readings.size() > survey::kLargestRecceBytes) {
        readings.clear();
    }
    if (readings != readings_) {
        readings_ = std::move(readings);
        keep_soon();
    }
}

/// Whether there is anything that is not in the file.
bool Keeper::has_work() const {
    return !desk_.is_saved() || !readings_.empty();
}

void Keeper::keep_apart() {
    let_go_ = false;
    again_.stop();
    if (has_work()) {
        writer_->write({{}, path_, known_mark_, 0, {}, readings_}, desk_.plan());
    } else {
        writer_->drop();
    }
}

void Keeper::flush() {
    if (soon_.isActive()) {
        soon_.stop();
        keep_apart();
    }
    writer_->flush();
}

void Keeper::let_go() {
    soon_.stop();
    again_.stop();
    let_go_ = true;
    writer_->drop();
    writer_->flush();
    lock_.reset();
}

bool Keeper::lock(const std::filesystem::path& path) {
    auto lock = std::make_unique<QLockFile>(path_text(lock_path(path)));
    lock->setStaleLockTime(kNeverStale);
    if (!lock->tryLock(0) && lock->error() == QLockFile::LockFailedError) {
        return false;
    }
    // In a folder that cannot be written to nobody can hold a lock; nor can anybody save there.
    lock_ = std::move(lock);
    return true;
}

/// The file, and its folder too while the file is not there, as when a program takes it away and
/// puts another in its place.
void Keeper::watch() {
    if (path_.empty()) {
        return;
    }
    std::error_code fault;
    const QString folder = path_text(path_.parent_path());
    if (std::filesystem::exists(path_, fault)) {
        watcher_->addPath(path_text(path_));
        if (watcher_->directories().contains(folder)) {
            watcher_->removePath(folder);
        }
    } else {
        watcher_->addPath(folder);
    }
}

void Keeper::take_path(const std::filesystem::path& path, std::optional<std::string> text) {
    for (const QStringList& watched : {watcher_->files(), watcher_->directories()}) {
        if (!watched.isEmpty()) {
            watcher_->removePaths(watched);
        }
    }
    const bool is_other = path != path_;
    path_ = path;
    known_mark_ = text ? file_mark(*text) : std::string{};
    known_text_ = std::move(text);
    watch();
    if (is_other) {
        Q_EMIT path_changed();
    }
}

Result<QStringList> Keeper::open(const std::filesystem::path& named) {
    std::error_code fault;
    const std::filesystem::path absolute = std::filesystem::absolute(named, fault);
    const std::filesystem::path path = fault ? named : absolute;
    Result<std::string> text = read_text_file(path, plan::kLargestPlanBytes);
    if (!text) {
        return tl::unexpected{text.error()};
    }
    plan::Salvaged read = plan::salvaged(*text, *desk_.catalogue(), path.filename().string());
    auto laid = std::make_shared<const plan::Plan>(std::move(read.plan));
    QStringList told;
    lock_.reset();
    if (!read.errors.empty()) {
        told << tr("%1 is damaged. What could be read is open under no name; the file stays as it "
                   "is.")
                    .arg(file_text(path))
             << sentences_of(read);
        take_path({}, {});
        desk_.lay_out(std::move(laid), false);
        return told;
    }
    if (!lock(path)) {
        told << tr("%1 is open in another window. This is a copy under no name.")
                    .arg(file_text(path));
        take_path({}, {});
        desk_.lay_out(std::move(laid), false);
        return told;
    }
    take_path(path, std::move(*text));
    desk_.lay_out(std::move(laid), true);
    return told;
}

void Keeper::begin(plan::Plan plan) {
    lock_.reset();
    take_path({}, {});
    desk_.lay_out(std::make_shared<const plan::Plan>(std::move(plan)), false);
}

Result<QStringList> Keeper::take_up(const Recovery& recovery) {
    plan::Salvaged read =
        plan::salvaged(recovery.plan_text, *desk_.catalogue(), recovery.kept.filename().string());
    QStringList told = sentences_of(read);
    lock_.reset();
    std::error_code fault;
    const bool has_file =
        !recovery.original.empty() && std::filesystem::is_regular_file(recovery.original, fault);
    const auto on_disk = has_file ? read_text_file(recovery.original, plan::kLargestPlanBytes)
                                  : Result<std::string>{failure("")};
    if (!on_disk || !lock(recovery.original)) {
        take_path({}, {});
    } else if (file_mark(*on_disk) == recovery.original_mark) {
        take_path(recovery.original, *on_disk);
    } else {
        told.prepend(tr("%1 was changed after this work began; saving asks what to do about it.")
                         .arg(file_text(recovery.original)));
        take_path(recovery.original, std::nullopt);
    }
    desk_.lay_out(std::make_shared<const plan::Plan>(std::move(read.plan)),
                  told.isEmpty() && known_text_ == recovery.plan_text);
    // Not before: whoever shows readings may have told of none for the plan laid out.
    readings_ = recovery.readings;
    soon_.stop();
    keep_apart();
    // The old entry goes only once a new one holds all of it.
    if (writer_->flush() && read.errors.empty()) {
        store_.drop(recovery.kept);
    }
    return told;
}

Result<std::string> Keeper::text_on_disk() const {
    return read_text_file(path_, plan::kLargestPlanBytes);
}

SaveOutcome Keeper::save(bool over_others) {
    if (path_.empty()) {
        return {Saved::no_name, tr("The work has no file yet.")};
    }
    std::error_code fault;
    const bool is_there = std::filesystem::exists(path_, fault);
    const Result<std::string> on_disk = is_there ? text_on_disk() : Result<std::string>{""};
    if (!over_others && is_there && (!on_disk || on_disk.value() != known_text_)) {
        return {Saved::changed_underneath,
                tr("%1 was changed by somebody else.").arg(file_text(path_))};
    }
    return write_to(path_, on_disk ? *on_disk : std::string{});
}

SaveOutcome Keeper::save_as(const std::filesystem::path& path) {
    std::error_code fault;
    const std::filesystem::path target = std::filesystem::absolute(path, fault);
    if (target == path_) {
        return save(true);
    }
    std::unique_ptr<QLockFile> before = std::move(lock_);
    if (!lock(target)) {
        lock_ = std::move(before);
        return {Saved::failed, tr("%1 is open in another window.").arg(file_text(target))};
    }
    const Result<std::string> on_disk = read_text_file(target, plan::kLargestPlanBytes);
    SaveOutcome outcome = write_to(target, on_disk ? *on_disk : std::string{});
    if (outcome.saved != Saved::done) {
        lock_ = std::move(before);
    }
    return outcome;
}

SaveOutcome Keeper::write_to(const std::filesystem::path& path, const std::string& before) {
    const std::string text = desk_.plan_text();
    // Our own writing is not somebody else's.
    if (!watcher_->files().isEmpty()) {
        watcher_->removePaths(watcher_->files());
    }
    // Where there is no room for the new one, the version before the old one stays, too.
    std::vector<NewFile> files;
    if (!before.empty() && before != text) {
        files.push_back({backup_path(path), before});
    }
    files.push_back({path, text});
    if (const auto done = write_files_whole(files); !done) {
        take_path(path_, known_text_);
        return {Saved::failed, tr("%1; put that right, or save the plan elsewhere")
                                   .arg(QString::fromStdString(done.error().message))};
    }
    take_path(path, text);
    desk_.mark_saved();
    soon_.stop();
    // Readings that are in no plan stay kept.
    keep_apart();
    return {Saved::done, {}};
}

Result<QStringList> Keeper::load_theirs() {
    const std::filesystem::path path = path_;
    return open(path);
}

QStringList Keeper::differences_from_file() const {
    QStringList sentences;
    const Result<std::string> text = text_on_disk();
    if (!text) {
        return {QString::fromStdString(text.error().message)};
    }
    const Checked<plan::Plan> theirs = plan::read_plan(*text, *desk_.catalogue());
    if (!theirs) {
        return sentences_of(theirs.error());
    }
    for (const plan::Difference& difference : plan::differences(*theirs, *desk_.plan())) {
        sentences << QString::fromStdString(difference.sentence);
    }
    return sentences;
}

void Keeper::file_changed() {
    watch();
    const Result<std::string> text = text_on_disk();
    if (text && text.value() != known_text_) {
        Q_EMIT changed_underneath();
    }
}

} // namespace throwline::ui
