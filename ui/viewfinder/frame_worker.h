#pragma once

#include "base/latest.h"
#include "checks/check.h"
#include "sheet/frame_words.h"
#include "ui/desk/desk.h"

#include <QImage>
#include <QObject>
#include <memory>
#include <optional>
#include <stop_token>
#include <thread>

namespace throwline::ui {

/// What the tones of a picture stand for.
enum class Shading {
    /// Each surface by its direction and finish, as on paper.
    plain,
    /// The light that the lamps throw on it.
    lit
};

struct FrameQuestion {
    plan::PlanPtr plan;
    CataloguePtr catalogue;
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Shot> shot;
    /// Larger side of the picture once things stand still, device pixels.
    int side_px = 0;
    Shading shading = Shading::plain;

    bool operator==(const FrameQuestion&) const = default;
};

/// A stage with one shot of it resolved, and what its pointers point into.
struct RaisedFrame {
    plan::PlanPtr plan;
    CataloguePtr catalogue;
    checks::ShotScene scene;
    sheet::FrameWords words;
    /// Level that the stop of the shot asks for; 0 when the shot cannot be resolved.
    double needed_lx = 0.0;
    /// Without a burning lamp there is nothing to be shown lit, and pictures are plain.
    bool has_light = false;

    Shading shading_for(Shading wish) const { return has_light ? wish : Shading::plain; }
};

struct FrameSeen {
    FrameQuestion question;
    std::shared_ptr<const RaisedFrame> raised;
    /// Null when the shot cannot be resolved.
    QImage image;
};

/// Raises the stage and makes the picture of one frame on a thread of its own: small at once, whole
/// when nothing else was asked for a moment, and a very large one in a middle size between. Another
/// question stops a whole picture under way, and of several that wait only the newest is answered.
class FrameWorker : public QObject {
    Q_OBJECT

  public:
    explicit FrameWorker(QObject* parent = nullptr);
    ~FrameWorker() override;

    void ask(FrameQuestion question);
    /// Drops what was asked for; nothing of it is seen any more.
    void forget();

  Q_SIGNALS:
    void seen(std::shared_ptr<const throwline::ui::FrameSeen> frame);

  private:
    struct Numbered {
        int number = 0;
        FrameQuestion question;
    };
    void work(const std::stop_token& stop);
    void post(int number, FrameSeen frame);

    int asked_ = 0;
    /// Pictures before this one are of no use any more.
    int oldest_ = 0;
    Latest<Numbered> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
