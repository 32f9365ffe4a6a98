#pragma once

#include "ui/desk/desk.h"
#include "ui/keeping/recovery_store.h"

#include <QObject>
#include <QStringList>
#include <QTimer>
#include <filesystem>
#include <memory>
#include <optional>

class QFileSystemWatcher;
class QLockFile;

namespace throwline::ui {

class RecoveryWriter;

/// How saving ended. A sentence with each but done.
enum class Saved { done, changed_underneath, no_name, failed };

struct SaveOutcome {
    Saved saved = Saved::done;
    QString sentence;
};

/// Keeps the work of one desk: in its file when asked to, and apart from it all the time.
class Keeper : public QObject {
    Q_OBJECT

  public:
    /// `window` tells the windows of one program apart.
    Keeper(Desk& desk, RecoveryStore store, int window, QObject* parent = nullptr);
    ~Keeper() override;

    /// The file; empty while the work has none.
    const std::filesystem::path& path() const { return path_; }

    /// Lays out the plan of a file. What cannot be read is left out and told, and the rest has no
    /// file name then, so that the damaged one is never written over; the same when another program
    /// has it open. Sentences to show; an error when nothing could be opened at all.
    Result<QStringList> open(const std::filesystem::path& path);
    /// Lays out a plan that has no file yet.
    void begin(plan::Plan plan);
    /// Lays out what a crash left behind, not saved, and takes the entry over. Sentences to show:
    /// what of it cannot be read, and whether its file is another by now, which the next save asks
    /// about.
    Result<QStringList> take_up(const Recovery& recovery);

    /// Writes the file. The version before is kept beside it with "~" at its end. A file that is no
    /// longer as it was opened or saved here is left alone unless `over_others`.
    SaveOutcome save(bool over_others = false);
    SaveOutcome save_as(const std::filesystem::path& path);
    /// Lays out what the file holds now, whatever was done here.
    Result<QStringList> load_theirs();
    /// Tape readings that are not in the plan are kept with the work; empty for none. More than a
    /// recce may hold is not kept.
    void keep_readings(std::string readings);
    /// Those, also as a recovery brought them back.
    const std::string& readings() const { return readings_; }

    /// What differs between the file and the work, a sentence each.
    QStringList differences_from_file() const;

    /// Nothing is to be recovered from here any more: the window closes as it should.
    void let_go();
    /// Waits until what was done so far is kept apart.
    void flush();

  Q_SIGNALS:
    /// Somebody else changed the file.
    void changed_underneath();
    void path_changed();
    /// Work cannot be kept apart from its file: a sentence why.
    void keeping_failed(const QString& sentence);

  private:
    void keep_soon();
    bool has_work() const;
    void keep_apart();
    void tell_not_kept(const QString& why);
    void take_path(const std::filesystem::path& path, std::optional<std::string> text);
    void watch();
    bool lock(const std::filesystem::path& path);
    void file_changed();
    Result<std::string> text_on_disk() const;
    SaveOutcome write_to(const std::filesystem::path& path, const std::string& before);

    Desk& desk_;
    RecoveryStore store_;
    std::filesystem::path place_;
    std::filesystem::path path_;
    /// What the file held when it was last read or written here; nothing when that is not known, so
    /// that whatever it holds is somebody else's.
    std::optional<std::string> known_text_;
    /// Of that text; empty for none.
    std::string known_mark_;
    std::string readings_;
    std::unique_ptr<QLockFile> lock_;
    QFileSystemWatcher* watcher_;
    QTimer soon_;
    /// Runs while what was done last could not be kept apart.
    QTimer again_;
    bool is_told_ = false;
    std::unique_ptr<RecoveryWriter> writer_;
    bool let_go_ = false;
};

} // namespace throwline::ui
