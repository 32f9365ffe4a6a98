#pragma once

#include "base/latest.h"
#include "checks/check.h"

#include <QImage>
#include <QObject>
#include <memory>
#include <optional>
#include <stop_token>
#include <thread>
#include <unordered_map>

namespace throwline::ui {

/// The frame of a shot as it was when its plan was that.
struct FramePicture {
    plan::PlanPtr plan;
    /// Null when the shot cannot be resolved.
    QImage image;
    /// Of the lens, with the extender where it is in; nothing for a shot without a picture.
    std::optional<Length> focal;
};

/// Small pictures of all shots of a plan, made on a thread of their own. A picture is kept as long
/// as nothing that reaches into it changes; one of an older plan stays, and says so, until its new
/// one is there.
class FramePictures : public QObject {
    Q_OBJECT

  public:
    explicit FramePictures(QObject* parent = nullptr);
    ~FramePictures() override;

    /// Makes the pictures of an analysis, `side_px` device pixels at their larger side; what was
    /// being made for an older one stops. Shots that it does not have are forgotten.
    void ask(std::shared_ptr<const checks::Analysis> analysis, int side_px);
    /// Null until there is one.
    const FramePicture* of(const plan::Id<plan::Shot>& shot) const;

  Q_SIGNALS:
    /// One or more pictures are new.
    void arrived();

  private:
    struct Question {
        int number = 0;
        std::shared_ptr<const checks::Analysis> analysis;
        int side_px = 0;
    };
    void work(const std::stop_token& stop);
    void take(int question, const plan::Id<plan::Shot>& shot, const FramePicture& picture);

    std::unordered_map<std::string, FramePicture> pictures_;
    /// Number of the question asked last.
    int asked_ = 0;
    Latest<Question> waiting_;
    /// Last, so that it ends before what it uses.
    std::jthread thread_;
};

} // namespace throwline::ui
