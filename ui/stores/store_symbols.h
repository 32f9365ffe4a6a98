#pragma once

#include "edit/stores.h"
#include "ui/look/look.h"

#include <QHash>
#include <QPixmap>
#include <QSize>
#include <QString>

namespace throwline::ui {

/// Small plan symbols of what the Stores hold, drawn as the floor draws them: all of a shelf at one
/// scale, so that a table looks larger than a chair. What would be larger than its place is
/// shrunk into it. Made when first asked for.
class StoreSymbols {
  public:
    /// `size` in logical pixels; the pixmap has the pixel ratio given.
    QPixmap symbol(const edit::StoresRow& row, const catalogue::Catalogue& catalogue,
                   const QSize& size, Theme theme, double pixel_ratio);
    void forget() { made_.clear(); }

  private:
    QHash<QString, QPixmap> made_;
};

} // namespace throwline::ui
