#pragma once

#include "edit/make.h"

#include <QString>
#include <optional>

class QMimeData;

namespace throwline::ui {

/// What is dragged from the Stores: JSON with "shelf" and "item".
QString item_mime_type();
/// Nothing when it carries none, or one of no known shelf.
std::optional<edit::StoreItem> carried_item(const QMimeData& data);
/// Paths of the files among what is carried.
QStringList carried_files(const QMimeData& data);

} // namespace throwline::ui
