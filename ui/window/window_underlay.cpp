#include "edit/underlay.h"
#include "ui/sheets/sheets_window.h"
#include "ui/underlay/underlay_notice.h"
#include "ui/underlay/underlay_reader.h"
#include "ui/window/window.h"

#include <QSplitter>
#include <QVBoxLayout>

/// The scanned plan beneath the floor: read, shown on screen and sheets, chosen, taken away.
namespace throwline::ui {

/// The floor, with a strip over it that tells what is wrong with the scanned plan.
void Window::build_floor(QSplitter& across) {
    underlay_ = new UnderlayReader{*desk_, this};
    auto* both = new QWidget{&across};
    auto* rows = new QVBoxLayout{both};
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    notice_ = new UnderlayNotice{*underlay_, both};
    rows->addWidget(notice_);
    floor_ = new Floor{*desk_, both};
    rows->addWidget(floor_, 1);
}

void Window::connect_underlay() {
    connect(keeper_, &Keeper::path_changed, this,
            [this] { underlay_->set_folder(keeper_->path().parent_path()); });
    connect(underlay_, &UnderlayReader::changed, this, [this] {
        floor_->set_underlay(underlay_->sizes());
        if (sheets_ != nullptr) {
            sheets_->set_underlay(underlay_->pixels());
        }
    });
    connect(underlay_, &UnderlayReader::laid, this, [this] {
        sheet::Overlays overlays = desk_->overlays();
        overlays.underlay = true;
        desk_->set_overlays(overlays);
        floor_->fit();
        draw_with(HandId::underlay);
    });
    connect(notice_, &UnderlayNotice::another_wanted, this, &Window::choose_underlay);
    connect(notice_, &UnderlayNotice::removal_wanted, this, &Window::take_underlay_away);
}

void Window::choose_underlay() {
    show_floor();
    const QString folder = keeper_->path().empty()
                               ? QString{}
                               : QString::fromStdString(keeper_->path().parent_path().string());
    const QString path = questions_.picture_to_lay(this, folder);
    if (!path.isEmpty()) {
        underlay_->lay(path.toStdString());
    }
}

void Window::take_underlay_away() {
    take(edit::underlay_removed(context()));
}

} // namespace throwline::ui
