#include "ui/floor/floor_painter.h"

#include "sheet/board.h"
#include "ui/paint/fonts.h"
#include "ui/paint/painter.h"

#include <QMetaObject>
#include <QPainter>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <condition_variable>
#include <mutex>

namespace throwline::ui {

namespace {

/// While the plan changes again and again a picture that is a little late is better than none.
constexpr qint64 kLongestWithout_ms = 150;

struct Question {
    int number = 0;
    PictureWanted wanted;
    std::stop_source stop;
};

void thicken(sheet::Pen& pen, double least_mm) {
    if (pen.width_mm > 0.0) {
        pen.width_mm = std::max(pen.width_mm, least_mm);
    }
}

struct Thicken {
    double least_mm;
    void operator()(sheet::Path& path) const { thicken(path.pen, least_mm); }
    void operator()(sheet::Circle& circle) const { thicken(circle.pen, least_mm); }
    void operator()(sheet::Text&) const {}
    void operator()(sheet::Picture&) const {}
};

/// The picture beneath the plan as large as the screen shows it.
sheet::ReducedPicture underlay_of(const PictureWanted& wanted) {
    return wanted.underlay == nullptr || !wanted.plan->underlay
               ? sheet::ReducedPicture{}
               : sheet::picture_for(*wanted.underlay, *wanted.plan->underlay,
                                    wanted.px_per_mm * wanted.device_pixel_ratio * wanted.mm_per_m);
}

/// On slate a scan is chalk, too: what is white in it becomes the ground.
void make_chalk(sheet::Layer& layer) {
    for (sheet::Mark& mark : layer.marks) {
        if (auto* picture = std::get_if<sheet::Picture>(&mark)) {
            auto chalk = std::make_shared<sheet::Pixels>(*picture->pixels);
            for (std::uint8_t& channel : chalk->rgb) {
                channel = static_cast<std::uint8_t>(255 - channel);
            }
            picture->pixels = std::move(chalk);
        }
    }
}

std::optional<sheet::Drawing> drawing_of(const PictureWanted& wanted, const std::stop_token& stop) {
    std::set<std::string> left_out = wanted.hidden;
    left_out.insert(wanted.lifted.begin(), wanted.lifted.end());
    const sheet::FloorQuestion question{*wanted.plan,          *wanted.catalogue,
                                        wanted.now.beat,       wanted.now.shot,
                                        wanted.mm_per_m,       wanted.window,
                                        wanted.in_sight,       wanted.overlays,
                                        std::move(left_out),   {},
                                        wanted.analysis.get(), underlay_of(wanted),
                                        wanted.levels};
    return sheet::floor_drawing(question, paint::FontMeasure{}, stop);
}

double ms_since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
        .count();
}

} // namespace

void thicken_lines(sheet::Drawing& drawing, double least_mm) {
    for (sheet::Layer& layer : drawing.layers) {
        for (sheet::Mark& mark : layer.marks) {
            std::visit(Thicken{least_mm}, mark);
        }
    }
}

std::optional<QImage> painted_floor(const PictureWanted& wanted, const std::stop_token& stop) {
    std::optional<sheet::Drawing> drawing = drawing_of(wanted, stop);
    if (!drawing) {
        return std::nullopt;
    }
    const double device_px_per_mm = wanted.px_per_mm * wanted.device_pixel_ratio;
    thicken_lines(*drawing, 1.0 / device_px_per_mm);
    const sheet::Box& window = wanted.window;
    QImage image{static_cast<int>(std::ceil(window.width * device_px_per_mm)),
                 static_cast<int>(std::ceil(window.height * device_px_per_mm)),
                 QImage::Format_RGB32};
    const QColor ground = floor_ground(wanted.theme);
    image.fill(ground);
    QPainter painter{&image};
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(device_px_per_mm, device_px_per_mm);
    painter.translate(-window.left, -window.top);
    for (sheet::Layer& layer : drawing->layers) {
        if (wanted.theme == Theme::dark
            && layer.name == sheet::name_of(sheet::PlanLayer::underlay)) {
            make_chalk(layer);
        }
        if (stop.stop_requested()) {
            return std::nullopt;
        }
        paint::paint_layer(painter, layer, wanted.theme, ground);
    }
    painter.end();
    image.setDevicePixelRatio(wanted.device_pixel_ratio);
    return image;
}

struct FloorPicture::Shared {
    std::mutex guard;
    std::condition_variable_any changed;
    std::optional<Question> waiting;
    /// Stops what is being made.
    std::stop_source under_way;
};

FloorPicture::FloorPicture(QObject* parent)
    : QObject{parent}, shared_{std::make_unique<Shared>()},
      thread_{[this](const std::stop_token& stop) { work(stop); }} {}

FloorPicture::~FloorPicture() {
    thread_.request_stop();
    const std::lock_guard lock{shared_->guard};
    shared_->under_way.request_stop();
}

void FloorPicture::ask(PictureWanted wanted, bool afresh) {
    if (!is_busy()) {
        waiting_.start();
    }
    ++asked_;
    {
        const std::lock_guard lock{shared_->guard};
        if (afresh && (!waiting_.isValid() || waiting_.elapsed() < kLongestWithout_ms)) {
            oldest_ = asked_;
            shared_->under_way.request_stop();
        }
        shared_->waiting = Question{asked_, std::move(wanted), {}};
    }
    shared_->changed.notify_one();
}

void FloorPicture::work(const std::stop_token& stop) {
    while (true) {
        Question question;
        {
            std::unique_lock lock{shared_->guard};
            if (!shared_->changed.wait(lock, stop, [&] { return shared_->waiting.has_value(); })) {
                return;
            }
            question = std::move(*shared_->waiting);
            shared_->waiting.reset();
            shared_->under_way = question.stop;
        }
        const auto start = std::chrono::steady_clock::now();
        std::optional<QImage> image = painted_floor(question.wanted, question.stop.get_token());
        if (!image) {
            continue;
        }
        FloorImage made{std::move(*image), std::move(question.wanted), question.number,
                        ms_since(start)};
        QMetaObject::invokeMethod(
            this, [this, made = std::move(made)]() mutable { take(std::move(made)); },
            Qt::QueuedConnection);
    }
}

void FloorPicture::take(FloorImage made) {
    if (made.number >= oldest_) {
        latest_ = std::move(made);
        waiting_.start();
        Q_EMIT arrived();
    }
}

} // namespace throwline::ui
