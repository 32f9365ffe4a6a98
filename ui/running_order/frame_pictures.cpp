#include "ui/running_order/frame_pictures.h"

#include "sheet/frame_picture.h"
#include "sheet/picture_key.h"
#include "ui/look/picture_image.h"

#include <QMetaObject>
#include <map>
#include <set>

namespace throwline::ui {

namespace {

/// Pictures by what they were drawn from.
using Kept = std::map<std::pair<std::uint64_t, int>, QImage>;

/// One scene a shot: at the first of its beats in which it sees something.
std::vector<const checks::ShotScene*> scenes_shown(const checks::Analysis& analysis) {
    std::vector<const checks::ShotScene*> scenes;
    for (const checks::ShotScene& scene : analysis.shots) {
        if (scenes.empty() || scenes.back()->shot != scene.shot) {
            scenes.push_back(&scene);
        } else if (!scenes.back()->view) {
            scenes.back() = &scene;
        }
    }
    return scenes;
}

QImage picture_of(const checks::ShotScene& scene, int side_px, const Kept& before, Kept& kept) {
    const std::optional<std::uint64_t> key = sheet::picture_key(scene);
    if (!key) {
        return {};
    }
    const auto known = before.find({*key, side_px});
    QImage image =
        known != before.end() ? known->second : image_of(*sheet::frame_picture(scene, side_px));
    kept.insert_or_assign({*key, side_px}, image);
    return image;
}

} // namespace

FramePictures::FramePictures(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

FramePictures::~FramePictures() = default;

void FramePictures::ask(std::shared_ptr<const checks::Analysis> analysis, int side_px) {
    std::set<std::string> there;
    for (const checks::ShotScene& scene : analysis->shots) {
        there.insert(scene.shot->id.name);
    }
    std::erase_if(pictures_, [&](const auto& entry) { return !there.contains(entry.first); });
    waiting_.put({++asked_, std::move(analysis), side_px});
}

const FramePicture* FramePictures::of(const plan::Id<plan::Shot>& shot) const {
    const auto at = pictures_.find(shot.name);
    return at == pictures_.end() ? nullptr : &at->second;
}

void FramePictures::work(const std::stop_token& stop) {
    Kept kept;
    while (const std::optional<Question> question = waiting_.take(stop)) {
        Kept made;
        bool whole = true;
        for (const checks::ShotScene* scene : scenes_shown(*question->analysis)) {
            if (waiting_.has_one() || stop.stop_requested()) {
                whole = false;
                break;
            }
            FramePicture picture{question->analysis->plan, {}, {}};
            picture.image = picture_of(*scene, question->side_px, kept, made);
            if (scene->view) {
                picture.focal = scene->view->focal;
            }
            QMetaObject::invokeMethod(
                this,
                [this, number = question->number, shot = scene->shot->id, picture] {
                    take(number, shot, picture);
                },
                Qt::QueuedConnection);
        }
        if (whole) {
            kept = std::move(made);
        } else {
            kept.merge(made);
        }
    }
}

void FramePictures::take(int question, const plan::Id<plan::Shot>& shot,
                         const FramePicture& picture) {
    if (question == asked_) {
        pictures_.insert_or_assign(shot.name, picture);
        Q_EMIT arrived();
    }
}

} // namespace throwline::ui
