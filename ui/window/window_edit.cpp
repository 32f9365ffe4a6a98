#include "edit/clip.h"
#include "edit/pick.h"
#include "ui/window/action_book.h"
#include "ui/window/rows_form.h"
#include "ui/window/window.h"

#include <QApplication>
#include <QClipboard>
#include <QMimeData>
#include <algorithm>

/// What the window does to what is chosen.
namespace throwline::ui {

namespace {

/// Where a copy lands beside its original.
const Vec2 kBeside_m{0.5, -0.5};

} // namespace

std::vector<edit::Thing> Window::whole_choice() const {
    return edit::whole_groups(context(), chosen());
}

std::optional<Vec2> Window::middle_of_choice() const {
    std::optional<Vec2> low;
    Vec2 high = Vec2::Zero();
    for (const edit::Thing& thing : whole_choice()) {
        for (const Vec2& corner : edit::outline_of(context(), thing)) {
            high = low ? Vec2{high.cwiseMax(corner)} : corner;
            low = low ? Vec2{low->cwiseMin(corner)} : corner;
        }
    }
    return low ? std::optional{Vec2{(*low + high) / 2.0}} : std::nullopt;
}

void Window::copy() {
    const std::string text = edit::clipped(context(), whole_choice());
    if (text.empty()) {
        tell_said(tr("Walls, openings and outlets cannot be carried; choose something else."));
        return;
    }
    auto* carried = new QMimeData;
    carried->setData(QStringLiteral("application/x-throwline-things"),
                     QByteArray::fromStdString(text));
    QStringList names;
    for (const edit::Thing& thing : chosen()) {
        names << QString::fromStdString(edit::name_of(thing));
    }
    carried->setText(names.join(QStringLiteral(", ")));
    QApplication::clipboard()->setMimeData(carried);
}

/// What cannot be carried stays: it could not be put back.
void Window::cut() {
    const std::vector<edit::Thing> all = whole_choice();
    const std::vector<edit::Thing> carried = edit::travelling(context(), all);
    copy();
    if (!carried.empty() && take(edit::removed(context(), carried, false))
        && carried.size() < all.size()) {
        tell_said(tr("Walls, openings and outlets cannot be carried; they were left. Del takes "
                     "them away."));
    }
}

void Window::paste() {
    const QMimeData* carried = QApplication::clipboard()->mimeData();
    const QByteArray text = carried == nullptr
                                ? QByteArray{}
                                : carried->data(QStringLiteral("application/x-throwline-things"));
    if (text.isEmpty()) {
        tell_said(tr("Nothing was copied that can stand on a floor."));
        return;
    }
    show_floor();
    take(edit::pasted(context(), text.toStdString(), std::nullopt));
}

void Window::copy_beside() {
    take(edit::copied(context(), whole_choice(), kBeside_m));
}

void Window::ask_rows_and_columns() {
    if (const auto array = asked_rows(this, desk_->plan()->units)) {
        take(edit::arrayed(context(), whole_choice(), *array));
    }
}

void Window::take_away(bool from_this_beat) {
    take(edit::removed(context(), whole_choice(), from_this_beat));
}

void Window::choose_all() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        if (thing.kind != edit::Kind::wall && !edit::is_hidden(*desk_->plan(), thing)
            && !edit::is_locked(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::choose_others() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        const bool is_chosen = std::find(chosen().begin(), chosen().end(), thing) != chosen().end();
        if (!is_chosen && thing.kind != edit::Kind::wall
            && !edit::is_hidden(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::choose_same_kind() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        if (thing.kind == chosen().front().kind && !edit::is_hidden(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::turn(Angle by) {
    if (const auto middle = middle_of_choice()) {
        take(edit::turned(context(), whole_choice(), *middle, by));
    }
}

void Window::mirror(Angle line) {
    if (const auto middle = middle_of_choice()) {
        take(edit::mirrored(context(), whole_choice(), *middle, line));
    }
}

bool Window::all_chosen_locked() const {
    return !chosen().empty()
           && std::all_of(chosen().begin(), chosen().end(), [&](const edit::Thing& thing) {
                  return edit::is_locked(*desk_->plan(), thing);
              });
}

bool Window::has_hidden() const {
    return !desk_->plan()->arrangement.hidden.empty();
}

void Window::lock_or_unlock() {
    take(edit::locked(context(), chosen(), !all_chosen_locked()));
}

void Window::draw_with(HandId hand) {
    show_floor();
    floor_->set_hand(hand);
    floor_->setFocus();
}

HandId Window::hand() const {
    return floor_->hand();
}

} // namespace throwline::ui
