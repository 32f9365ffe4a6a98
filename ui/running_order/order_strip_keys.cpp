/// What the keyboard and the menu do on the strip.

#include "ui/running_order/order_access.h"
#include "ui/running_order/order_strip.h"

#include <QContextMenuEvent>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QScrollBar>
#include <algorithm>

namespace throwline::ui {

namespace {

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

bool is_plain(Qt::KeyboardModifiers modifiers) {
    return (modifiers & ~Qt::KeypadModifier) == Qt::NoModifier;
}

/// A beat or shot that one plan has and the other has not.
edit::Now new_in(const plan::Plan& after, const plan::Plan& before) {
    for (const plan::Shot& shot : after.shots) {
        if (plan::find(before, shot.id) == nullptr) {
            return {shot.beats.front(), shot.id};
        }
    }
    for (const plan::Beat& beat : after.beats) {
        if (plan::find(before, beat.id) == nullptr) {
            return {beat.id, {}};
        }
    }
    return {};
}

} // namespace

bool OrderStrip::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && !view_.order.empty()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (is_strip_key(key->key(), key->modifiers())) {
            event->accept();
            return true;
        }
    }
    return QAbstractScrollArea::event(event);
}

bool OrderStrip::is_strip_key(int key, Qt::KeyboardModifiers modifiers) {
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
        return is_plain(modifiers) || modifiers == Qt::AltModifier;
    case Qt::Key_Home:
    case Qt::Key_End:
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
    case Qt::Key_F2:
    case Qt::Key_Delete:
    case Qt::Key_Escape:
        return is_plain(modifiers);
    default:
        return false;
    }
}

void OrderStrip::keyPressEvent(QKeyEvent* event) {
    if (view_.order.empty() || !is_strip_key(event->key(), event->modifiers())) {
        QAbstractScrollArea::keyPressEvent(event);
        return;
    }
    const bool reorder = event->modifiers() == Qt::AltModifier;
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Right: {
        const int by = event->key() == Qt::Key_Left ? -1 : 1;
        reorder ? step(focus_, by) : move_focus(by);
        break;
    }
    case Qt::Key_Home:
        set_focus_place(view_.places().front());
        break;
    case Qt::Key_End:
        set_focus_place(view_.places().back());
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        go_to(focus_);
        break;
    case Qt::Key_Space:
        player_.is_playing() ? player_.stop() : player_.play();
        break;
    case Qt::Key_F2:
        rename(focus_);
        break;
    case Qt::Key_Delete:
        remove(focus_);
        break;
    case Qt::Key_Escape:
        let_go();
        break;
    default:
        break;
    }
    event->accept();
}

void OrderStrip::let_go() {
    player_.stop();
    drag_ = Drag::none;
    drop_.reset();
    viewport()->update();
}

void OrderStrip::move_focus(int by) {
    const std::vector<OrderPlace> places = view_.places();
    const auto at = std::find(places.begin(), places.end(), focus_);
    const auto index = std::clamp<std::ptrdiff_t>(at - places.begin() + by, 0,
                                                  static_cast<std::ptrdiff_t>(places.size()) - 1);
    set_focus_place(places[static_cast<std::size_t>(index)]);
}

void OrderStrip::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
    tell_focus(*this);
}

void OrderStrip::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

// What can be done with a place --------------------------------------------------------------

void OrderStrip::go_to(const OrderPlace& place) {
    if (place) {
        player_.stop();
        desk_.set_now(view_.now_of(place));
        desk_.set_way(1.0);
    }
}

void OrderStrip::step(const OrderPlace& place, int by) {
    if (!place) {
        return;
    }
    const edit::Now what = view_.now_of(place);
    const bool taken =
        desk_.take(place.is_shot() ? edit::shot_stepped(desk_.context(), what.shot, by)
                                   : edit::beat_stepped(desk_.context(), what.beat, by));
    if (taken) {
        set_focus_place(view_.place_of(what));
    }
}

void OrderStrip::remove(const OrderPlace& place) {
    if (place) {
        const edit::Now what = view_.now_of(place);
        desk_.take(place.is_shot() ? edit::shot_removed(desk_.context(), what.shot)
                                   : edit::beat_removed(desk_.context(), what.beat));
    }
}

void OrderStrip::take_and_go(const Result<edit::Step>& step) {
    const plan::PlanPtr before = desk_.plan();
    if (!desk_.take(step)) {
        return;
    }
    const edit::Now made = new_in(*desk_.plan(), *before);
    if (!made.beat.empty()) {
        desk_.set_now(made);
        if (const OrderPlace place = view_.place_of(made)) {
            set_focus_place(place);
        }
    }
}

void OrderStrip::add_beat() {
    take_and_go(edit::beat_added(desk_.context(), desk_.now().beat, {}));
}

void OrderStrip::add_shot(const plan::Id<plan::Camera>& camera) {
    if (desk_.now().beat.empty()) {
        desk_.say(tr("A shot hangs on a beat: add a beat first."));
        return;
    }
    take_and_go(edit::shot_added(desk_.context(), desk_.now().beat, camera));
}

void OrderStrip::rename(const OrderPlace& place) {
    if (!place) {
        return;
    }
    const edit::Now what = view_.now_of(place);
    show_place(place);
    if (place.is_shot()) {
        const ShotBox& box = view_.layout.beats[static_cast<std::size_t>(place.beat)]
                                 .shots[static_cast<std::size_t>(place.shot)];
        edit(box.lettering.adjusted(-2, -2, 0, 0), tr("Name of the shot"), text(what.shot.name),
             [this, what](const std::string& name) {
                 return edit::shot_renamed(desk_.context(), what.shot, name);
             });
        return;
    }
    edit(view_.layout.box(place), tr("What happens in the beat"),
         text(plan::find(*desk_.plan(), what.beat)->name), [this, what](const std::string& name) {
             return edit::beat_retold(desk_.context(), what.beat, name);
         });
}

void OrderStrip::renumber(const OrderPlace& place) {
    const edit::Now what = view_.now_of(place);
    show_place(place);
    edit(view_.layout.box(place), tr("Number of the beat"), text(what.beat.name),
         [this, what](const std::string& name) {
             return edit::beat_renamed(desk_.context(), what.beat, name);
         });
}

void OrderStrip::edit(const QRectF& box, const QString& what, const QString& words,
                      const std::function<Result<edit::Step>(const std::string&)>& step) {
    delete editor_;
    editor_ = new QLineEdit{words, viewport()};
    editor_->setAccessibleName(what);
    editor_->setToolTip(what);
    const QRect at = box.translated(-horizontalScrollBar()->value(), 0).toAlignedRect();
    editor_->setGeometry(at.left(), std::max(0, at.top()), std::max(at.width(), 72),
                         editor_->sizeHint().height());
    editor_->selectAll();
    editor_->installEventFilter(this);
    editor_->show();
    editor_->setFocus();
    connect(editor_, &QLineEdit::editingFinished, this, [this, words, step] {
        QLineEdit* field = editor_;
        if (field == nullptr) {
            return;
        }
        editor_.clear();
        const QString typed = field->text().trimmed();
        const bool had_keyboard = field->hasFocus();
        field->deleteLater();
        if (typed != words) {
            desk_.take(step(typed.toStdString()));
        }
        if (had_keyboard) {
            setFocus();
        }
    });
}

bool OrderStrip::eventFilter(QObject* watched, QEvent* event) {
    if (watched == editor_ && event->type() == QEvent::KeyPress
        && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        QLineEdit* field = editor_;
        editor_.clear();
        field->deleteLater();
        setFocus();
        return true;
    }
    return QAbstractScrollArea::eventFilter(watched, event);
}

void OrderStrip::fill_menu(QMenu& menu, const OrderPlace& place) {
    if (place) {
        const QString name = place.is_shot() ? tr("shot") : tr("beat");
        menu.addAction(tr("Go there"), this, [this, place] { go_to(place); });
        menu.addAction(place.is_shot() ? tr("Rename") : tr("Say what happens in it"), this,
                       [this, place] { rename(place); });
        if (!place.is_shot()) {
            menu.addAction(tr("Change its number"), this, [this, place] { renumber(place); });
        }
        menu.addAction(tr("One earlier"), this, [this, place] { step(place, -1); });
        menu.addAction(tr("One later"), this, [this, place] { step(place, 1); });
        menu.addAction(tr("Take this %1 away").arg(name), this, [this, place] { remove(place); });
        menu.addSeparator();
    }
    menu.addAction(tr("New beat after now"), this, &OrderStrip::add_beat);
    QMenu* shots = menu.addMenu(tr("New shot of now by"));
    shots->setEnabled(!desk_.plan()->cameras.empty() && !desk_.now().beat.empty());
    for (const plan::Camera& camera : desk_.plan()->cameras) {
        shots->addAction(text(camera.id.name), this, [this, id = camera.id] { add_shot(id); });
    }
}

void OrderStrip::contextMenuEvent(QContextMenuEvent* event) {
    OrderPlace place = focus_;
    if (event->reason() == QContextMenuEvent::Mouse) {
        place = view_.layout.at(on_strip(event->pos()));
        if (place) {
            set_focus_place(place);
        }
    }
    auto* menu = new QMenu{this};
    menu->setAttribute(Qt::WA_DeleteOnClose);
    fill_menu(*menu, place);
    menu->popup(event->globalPos());
}

} // namespace throwline::ui
