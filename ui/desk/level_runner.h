#pragma once

#include "base/latest.h"
#include "sheet/level_picture.h"
#include "ui/desk/desk.h"

#include <QObject>
#include <memory>
#include <optional>
#include <stop_token>
#include <thread>

namespace throwline::ui {

/// Whose light is to be mapped: that of one beat.
struct LevelsWanted {
    plan::PlanPtr plan;
    CataloguePtr catalogue;
    /// Empty for a plan without beats.
    plan::Id<plan::Beat> beat;

    bool operator==(const LevelsWanted&) const = default;
};

/// A level map, and of what.
struct FloorLevels {
    LevelsWanted of;
    /// Null for a plan without a room.
    std::shared_ptr<const sheet::LevelPicture> picture;
};

/// Works out level maps on a thread of its own. Asking for another stops the one under way; what
/// arrives is always about what was asked for last. Only what a change may have altered is worked
/// out anew.
class LevelRunner : public QObject {
    Q_OBJECT

  public:
    explicit LevelRunner(QObject* parent = nullptr);
    ~LevelRunner() override;

    /// Does nothing when it was asked for last.
    void ask(LevelsWanted wanted);
    /// Gives up what is under way.
    void stop();
    bool is_running() const { return is_running_; }

  Q_SIGNALS:
    void arrived(const throwline::ui::FloorLevels& levels);
    /// Share of what was asked for last that is done, 0..1.
    void went_on(double share);

  private:
    struct Numbered {
        int number = 0;
        LevelsWanted wanted;
    };
    void work(const std::stop_token& stop);
    std::optional<FloorLevels> worked_out(const Numbered& question, const std::stop_token& stop);
    void tell(int number, double share);
    void take(int number, FloorLevels levels);

    LevelsWanted wanted_;
    bool is_running_ = false;
    int asked_ = 0;
    Latest<Numbered> waiting_;
    /// Of the thread alone: what the next map need not work out anew.
    std::optional<stage::LevelMap> known_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
