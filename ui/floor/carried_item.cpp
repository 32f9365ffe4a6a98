#include "ui/floor/carried_item.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <QMimeData>
#include <QUrl>
#include <array>

namespace throwline::ui {

namespace {

struct ShelfName {
    edit::Shelf shelf;
    const char* name;
};

constexpr std::array kShelves{
    ShelfName{edit::Shelf::stock, "stock"},   ShelfName{edit::Shelf::person, "person"},
    ShelfName{edit::Shelf::camera, "camera"}, ShelfName{edit::Shelf::lamp, "lamp"},
    ShelfName{edit::Shelf::boom, "boom"},     ShelfName{edit::Shelf::outlet, "outlet"}};

} // namespace

QString item_mime_type() {
    return QStringLiteral("application/x-throwline-item");
}

std::optional<edit::StoreItem> carried_item(const QMimeData& data) {
    const QJsonObject said = QJsonDocument::fromJson(data.data(item_mime_type())).object();
    const QString shelf = said.value(QStringLiteral("shelf")).toString();
    for (const ShelfName& known : kShelves) {
        if (shelf == QLatin1String{known.name}) {
            return edit::StoreItem{known.shelf,
                                   said.value(QStringLiteral("item")).toString().toStdString()};
        }
    }
    return std::nullopt;
}

QStringList carried_files(const QMimeData& data) {
    QStringList paths;
    for (const QUrl& url : data.urls()) {
        if (url.isLocalFile()) {
            paths << url.toLocalFile();
        }
    }
    return paths;
}

} // namespace throwline::ui
