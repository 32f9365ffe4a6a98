#include "ui/viewfinder/viewfinder.h"

#include "edit/order.h"
#include "sheet/lit_reading.h"
#include "ui/viewfinder/frame_view.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

} // namespace

Viewfinder::Viewfinder(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    setAccessibleName(tr("Viewfinder"));
    setAutoFillBackground(true);
    view_ = new FrameView{desk_, this};
    setFocusProxy(view_);
    words_ = new QLabel{this};
    words_->setWordWrap(true);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAccessibleName(tr("About the frame"));
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(6, 6, 6, 4);
    rows->setSpacing(4);
    rows->addWidget(view_, 1);
    add_controls();
    rows->addWidget(controls_);
    rows->addWidget(words_);
    add_advice();
    connect(view_, &FrameView::frame_changed, this, &Viewfinder::tell_frame);
    connect(&desk_, &Desk::now_changed, this, &Viewfinder::tell_frame);
    connect(&desk_, &Desk::plan_changed, this, &Viewfinder::tell_frame);
    tell_frame();
}

void Viewfinder::add_controls() {
    controls_ = new QWidget{this};
    auto* row = new QHBoxLayout{controls_};
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(guides_button());
    row->addWidget(light_button());
    row->addStretch();
    title_ = new QLabel{controls_};
    title_->setAccessibleName(tr("Shot in the viewfinder"));
    row->addWidget(title_);
}

QPushButton* Viewfinder::guides_button() {
    auto* guides = new QPushButton{tr("Guides"), controls_};
    guides->setToolTip(tr("Lines to frame by, laid over the picture"));
    auto* menu = new QMenu{guides};
    for (const GuideChoice& choice : guide_choices()) {
        QAction* action = menu->addAction(
            QStringLiteral("%1\t%2").arg(tr(choice.words), QKeySequence{choice.key}.toString()));
        action->setCheckable(true);
        connect(action, &QAction::triggered, view_, [this, &choice](bool shown) {
            FrameGuides all = view_->guides();
            all.*choice.shown = shown;
            view_->set_guides(all);
        });
        const auto tell = [this, action, &choice] {
            action->setChecked(view_->guides().*choice.shown);
        };
        connect(view_, &FrameView::guides_changed, action, tell);
        tell();
    }
    guides->setMenu(menu);
    return guides;
}

QPushButton* Viewfinder::light_button() {
    auto* light = new QPushButton{tr("Light"), controls_};
    light->setCheckable(true);
    light->setToolTip(tr("Shows the frame in the light of its lamps (L)"));
    light->setAccessibleName(tr("The frame in the light of its lamps"));
    connect(light, &QPushButton::toggled, view_,
            [this](bool is_lit) { view_->set_shading(is_lit ? Shading::lit : Shading::plain); });
    connect(view_, &FrameView::shading_changed, light,
            [this, light] { light->setChecked(view_->shading() == Shading::lit); });
    return light;
}

/// Lies over the picture's place while there is none.
void Viewfinder::add_advice() {
    advice_ = new QWidget{view_};
    advice_words_ = new QLabel{advice_};
    advice_words_->setWordWrap(true);
    advice_words_->setAlignment(Qt::AlignHCenter | Qt::AlignBottom);
    advice_words_->setAccessibleName(tr("Why there is no picture"));
    advice_button_ = new QPushButton{advice_};
    connect(advice_button_, &QPushButton::clicked, this, &Viewfinder::add_shot);
    auto* column = new QVBoxLayout{advice_};
    column->addStretch();
    column->addWidget(advice_words_);
    column->addWidget(advice_button_, 0, Qt::AlignHCenter);
    column->addStretch();
    auto* over = new QVBoxLayout{view_};
    over->addWidget(advice_);
}

plan::Id<plan::Camera> Viewfinder::camera_for_shot() const {
    const plan::Id<plan::Camera> asked =
        edit::camera_without_shot(desk_.shown_context(), desk_.chosen());
    if (!asked.empty() || desk_.plan()->cameras.empty()) {
        return asked;
    }
    return desk_.plan()->cameras.front().id;
}

QString Viewfinder::why_no_picture() const {
    const plan::Plan& plan = *desk_.shown();
    if (const FrameSeen* frame = view_->frame(); frame != nullptr && !view_->shot().empty()) {
        return frame->image.isNull()
                   ? tr("Shot %1 finds nobody to look at in beat %2. Put somebody of it on a mark, "
                        "or aim its camera at a place.")
                         .arg(text(frame->question.shot.name), text(frame->question.beat.name))
                   : QString{};
    }
    if (plan.cameras.empty()) {
        return tr("No camera yet. Put one on the floor from the Stores.");
    }
    if (plan.beats.empty()) {
        return tr("No beat yet. Add one in the running order; shots hang on beats.");
    }
    if (!view_->shot().empty()) {
        return {};
    }
    const plan::Id<plan::Camera> asked =
        edit::camera_without_shot(desk_.shown_context(), desk_.chosen());
    return asked.empty() ? tr("Beat %1 has no shot yet.").arg(text(desk_.now().beat.name))
                         : tr("%1 has no shot in beat %2 yet.")
                               .arg(text(asked.name), text(desk_.now().beat.name));
}

void Viewfinder::tell_frame() {
    const QString why = why_no_picture();
    advice_->setVisible(!why.isEmpty());
    advice_words_->setText(why);
    const bool can_add =
        view_->shot().empty() && !desk_.now().beat.empty() && !camera_for_shot().empty();
    advice_button_->setVisible(can_add);
    if (can_add) {
        advice_button_->setText(tr("New shot by %1").arg(text(camera_for_shot().name)));
    }
    const FrameSeen* frame = view_->frame();
    title_->setText(frame == nullptr ? QString{}
                                     : tr("<b>%1</b> in beat %2")
                                           .arg(text(frame->question.shot.name).toHtmlEscaped(),
                                                text(frame->question.beat.name).toHtmlEscaped()));
    const QString words = about_frame();
    words_->setText(words);
    view_->setAccessibleDescription((words.isEmpty() ? why : words) + QLatin1Char{' '}
                                    + FrameView::keys_told());
}

QString Viewfinder::about_frame() const {
    const FrameSeen* frame = view_->frame();
    if (frame == nullptr) {
        return {};
    }
    const RaisedFrame& raised = *frame->raised;
    QString words = text(raised.words.line());
    if (frame->question.shading == Shading::lit && raised.scene.view) {
        words += raised.has_light
                     ? QStringLiteral(" \u00B7 ")
                           + text(sheet::exposed_words(raised.needed_lx, raised.plan->units))
                     : tr(". No lamp burns in beat %1: shown plain.")
                           .arg(text(frame->question.beat.name));
    }
    return words;
}

void Viewfinder::add_shot() {
    const plan::PlanPtr before = desk_.plan();
    if (!desk_.take(edit::shot_added(desk_.context(), desk_.now().beat, camera_for_shot()))) {
        return;
    }
    for (const plan::Shot& shot : desk_.plan()->shots) {
        if (plan::find(*before, shot.id) == nullptr) {
            desk_.set_now({desk_.now().beat, shot.id});
            return;
        }
    }
}

} // namespace throwline::ui
