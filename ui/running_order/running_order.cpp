#include "ui/running_order/running_order.h"

#include "ui/running_order/order_strip.h"

#include <QActionGroup>
#include <QFocusEvent>
#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

struct Pace {
    double times;
    const char* words;
};
constexpr Pace kPaces[]{{0.5, QT_TRANSLATE_NOOP("RunningOrder", "at half pace")},
                        {1.0, QT_TRANSLATE_NOOP("RunningOrder", "at walking pace")},
                        {2.0, QT_TRANSLATE_NOOP("RunningOrder", "at twice the pace")}};

QPushButton* button(const QString& words, const QString& tip, QWidget* parent) {
    auto* made = new QPushButton{words, parent};
    made->setToolTip(tip);
    made->setAccessibleName(words);
    made->setAccessibleDescription(tip);
    made->setAutoDefault(false);
    // Words at the edge of the strip, not four boxes beside it.
    made->setStyleSheet(QStringLiteral(
        "QPushButton { border: 1px solid transparent; border-radius: 3px; text-align: left;"
        " padding: 2px 6px; } QPushButton:hover { border-color: palette(mid); }"
        " QPushButton:focus { border-color: palette(highlight); }"
        " QPushButton:pressed { background: palette(midlight); }"));
    return made;
}

/// The camera that a new shot is most likely meant for: the chosen one, else the one of the shot of
/// now, else the first.
plan::Id<plan::Camera> usual_camera(const Desk& desk) {
    if (desk.chosen().size() == 1 && desk.chosen().front().kind == edit::Kind::camera) {
        return {desk.chosen().front().name};
    }
    if (const plan::Shot* shot = plan::find(*desk.plan(), desk.now().shot)) {
        return shot->camera;
    }
    return desk.plan()->cameras.empty() ? plan::Id<plan::Camera>{}
                                        : desk.plan()->cameras.front().id;
}

} // namespace

RunningOrder::RunningOrder(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAccessibleName(tr("Running order panel"));
    setAutoFillBackground(true);
    player_ = new MovePlayer{desk_, this};
    strip_ = new OrderStrip{desk_, *player_, this};
    // No focus proxy: Tab would go past the buttons to it.
    setFocusPolicy(Qt::ClickFocus);
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    add_buttons();
    row->addWidget(buttons_);
    row->addWidget(strip_, 1);
    connect(player_, &MovePlayer::playing_changed, this, &RunningOrder::tell_playing);
    tell_playing();
}

void RunningOrder::add_buttons() {
    buttons_ = new QWidget{this};
    auto* column = new QVBoxLayout{buttons_};
    column->setContentsMargins(4, 4, 4, 4);
    column->setSpacing(0);
    play_ = button(tr("Play move"), {}, buttons_);
    connect(play_, &QPushButton::clicked, this, &RunningOrder::play_or_stop);
    pace_ = button({}, tr("How fast people walk when a move is played"), buttons_);
    fill_paces();
    QPushButton* beat = button(
        tr("New beat"), tr("Adds a beat after this one; everybody stays where they are"), buttons_);
    connect(beat, &QPushButton::clicked, strip_, &OrderStrip::add_beat);
    QPushButton* shot =
        button(tr("New shot"), tr("Adds a shot of this beat by a camera, as it stands"), buttons_);
    auto* cameras = new QMenu{shot};
    connect(cameras, &QMenu::aboutToShow, this, [this, cameras] { fill_cameras(*cameras); });
    shot->setMenu(cameras);
    for (QPushButton* each : {play_, pace_, beat, shot}) {
        column->addWidget(each);
    }
    column->addStretch();
    setTabOrder(shot, strip_);
}

void RunningOrder::fill_paces() {
    auto* menu = new QMenu{pace_};
    auto* group = new QActionGroup{menu};
    for (const Pace& pace : kPaces) {
        QAction* action = menu->addAction(tr(pace.words));
        action->setCheckable(true);
        action->setChecked(pace.times == player_->pace());
        group->addAction(action);
        const auto choose = [this, words = tr(pace.words), times = pace.times] {
            player_->set_pace(times);
            pace_->setText(words);
            pace_->setAccessibleName(tr("Pace: %1").arg(words));
        };
        connect(action, &QAction::triggered, this, choose);
        if (action->isChecked()) {
            choose();
        }
    }
    pace_->setMenu(menu);
}

void RunningOrder::fill_cameras(QMenu& menu) {
    menu.clear();
    if (desk_.plan()->cameras.empty()) {
        menu.addAction(tr("No camera yet: put one on the floor from the Stores"))
            ->setEnabled(false);
    }
    const plan::Id<plan::Camera> usual = usual_camera(desk_);
    for (const plan::Camera& camera : desk_.plan()->cameras) {
        QAction* action = menu.addAction(tr("by %1").arg(QString::fromStdString(camera.id.name)),
                                         this, [this, id = camera.id] { strip_->add_shot(id); });
        if (camera.id == usual) {
            menu.setActiveAction(action);
        }
    }
}

void RunningOrder::focusInEvent(QFocusEvent* event) {
    strip_->setFocus(event->reason());
}

void RunningOrder::play_or_stop() {
    player_->is_playing() ? player_->stop() : player_->play();
}

void RunningOrder::tell_playing() {
    const bool playing = player_->is_playing();
    play_->setText(playing ? tr("Stop") : tr("Play move"));
    play_->setAccessibleName(play_->text());
    play_->setToolTip(playing ? tr("Stops people where they are (Space)")
                              : tr("Walks everybody into the next beat at walking pace (Space)"));
}

} // namespace throwline::ui
