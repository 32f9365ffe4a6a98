#pragma once

#include "sheet/floor_drawing.h"
#include "ui/desk/desk.h"
#include "ui/look/look.h"

#include <QElapsedTimer>
#include <QImage>
#include <QObject>
#include <memory>
#include <optional>
#include <set>
#include <stop_token>
#include <string>
#include <thread>

class QPainter;

namespace throwline::ui {

/// The picture beneath the plan at several sizes; null for none.
using UnderlaySizes = std::shared_ptr<const std::vector<sheet::ReducedPicture>>;

/// Everything that a picture of the floor is made from; holds what it refers to.
struct PictureWanted {
    plan::PlanPtr plan;
    CataloguePtr catalogue;
    edit::Now now;
    sheet::Overlays overlays;
    /// Names of what is hidden, and of what is drawn over the picture for now.
    std::set<std::string> hidden;
    std::set<std::string> lifted;
    AnalysisPtr analysis;
    UnderlaySizes underlay;
    std::shared_ptr<const sheet::LevelPicture> levels;
    double mm_per_m = 20.0;
    /// Paper millimetres, the plan's origin at (0, 0).
    sheet::Box window;
    /// The part of it that is in sight.
    sheet::Box in_sight;
    Theme theme = Theme::light;
    /// Logical pixels a millimetre, and device pixels a logical one.
    double px_per_mm = 96.0 / 25.4;
    double device_pixel_ratio = 1.0;
};

/// A picture of the floor, and of what.
struct FloorImage {
    QImage image;
    PictureWanted of;
    int number = 0;
    /// Making it took this long.
    double took_ms = 0.0;
};

/// Lines thinner than a device pixel are made as thick as one. Lengths in paper millimetres.
void thicken_lines(sheet::Drawing& drawing, double least_mm);
/// The picture on the floor's ground; nothing when stopped.
std::optional<QImage> painted_floor(const PictureWanted& wanted, const std::stop_token& stop);

/// Makes pictures of the floor on a thread of its own; of several wanted while one is being made
/// only the newest is made next.
class FloorPicture : public QObject {
    Q_OBJECT

  public:
    explicit FloorPicture(QObject* parent = nullptr);
    ~FloorPicture() override;

    /// `afresh`: what is being made is of no use and is stopped, unless there has been nothing new
    /// for so long that the next may come too late as well.
    void ask(PictureWanted wanted, bool afresh);
    /// The newest there is.
    const std::optional<FloorImage>& latest() const { return latest_; }
    bool is_busy() const { return !latest_ || latest_->number != asked_; }

  Q_SIGNALS:
    void arrived();

  private:
    struct Shared;
    void work(const std::stop_token& stop);
    void take(FloorImage made);

    std::optional<FloorImage> latest_;
    int asked_ = 0;
    /// Pictures before this one are of no use any more.
    int oldest_ = 0;
    /// Since the first question after the newest picture.
    QElapsedTimer waiting_;
    std::unique_ptr<Shared> shared_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
