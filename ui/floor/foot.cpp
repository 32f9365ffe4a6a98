#include "ui/floor/foot.h"

#include "ui/floor/rulers.h"
#include "ui/look/hairline.h"

#include <QComboBox>
#include <QFontMetricsF>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPolygonF>
#include <QSignalBlocker>
#include <cmath>

namespace throwline::ui {

namespace {

/// The bar is at least this long, in heights of the font.
constexpr double kLeastBar = 5.0;
constexpr int kBarParts = 4;
/// A hint of fewer letters says nothing.
constexpr int kLeastHint = 20;

/// As many words as fit on a line, and on a second one what fits of the rest. A label that wraps
/// by itself would make the whole foot higher.
QString on_two_lines(const QString& text, const QFontMetrics& metrics, int width_px) {
    if (metrics.horizontalAdvance(text) <= width_px) {
        return text;
    }
    qsizetype end = text.lastIndexOf(QLatin1Char{' '});
    while (end > 0 && metrics.horizontalAdvance(text.left(end)) > width_px) {
        end = text.lastIndexOf(QLatin1Char{' '}, end - 1);
    }
    if (end <= 0) {
        return metrics.elidedText(text, Qt::ElideRight, width_px);
    }
    return text.left(end) + QLatin1Char{'\n'}
           + metrics.elidedText(text.mid(end + 1), Qt::ElideRight, width_px);
}

} // namespace

NorthAndBar::NorthAndBar(QWidget* parent) : QWidget{parent} {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);
    setAccessibleName(QStringLiteral("North and scale bar"));
}

QSize NorthAndBar::sizeHint() const {
    const int unit = fontMetrics().height();
    return {unit * 19, unit * 2};
}

void NorthAndBar::show_scale(double px_per_m, UnitSystem units, Angle north) {
    px_per_m_ = px_per_m;
    units_ = units;
    north_ = north;
    setToolTip(
        QStringLiteral("North is %1° clockwise from up the page").arg(std::lround(north.deg())));
    update();
}

void NorthAndBar::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme theme = theme_of(palette());
    paint_needle(painter, theme);
    paint_bar(painter, theme);
}

/// Half of it solid, so that its head is told without a letter; the letter stands beside.
void NorthAndBar::paint_needle(QPainter& painter, Theme theme) const {
    const QColor ink = paint::line_hue(sheet::Ink::built, theme);
    const double radius = height() * 0.36;
    painter.save();
    painter.translate(height() * 0.5, height() * 0.5);
    painter.rotate(north_.deg());
    painter.setPen(QPen{ink, 1.0});
    painter.setBrush(ink);
    painter.drawPolygon(QPolygonF{
        {QPointF{0, -radius}, QPointF{radius * 0.36, radius * 0.75}, QPointF{0, radius * 0.45}}});
    painter.setBrush(floor_ground(theme));
    painter.drawPolygon(QPolygonF{
        {QPointF{0, -radius}, QPointF{-radius * 0.36, radius * 0.75}, QPointF{0, radius * 0.45}}});
    painter.restore();
    painter.setPen(ink);
    painter.drawText(QRectF{height() * 0.95, 0.0, height() * 0.7, double(height())},
                     Qt::AlignVCenter | Qt::AlignLeft, QStringLiteral("N"));
}

void NorthAndBar::paint_bar(QPainter& painter, Theme theme) const {
    const double unit = QFontMetricsF{font()}.height();
    const double length_m = ruler_steps(px_per_m_, units_, unit * kLeastBar).long_m;
    const double length_px = std::min(length_m * px_per_m_, width() * 2.0);
    const double left = height() * 1.75;
    const double top = height() * 0.5 - 2.5;
    const QColor ink = paint::line_hue(sheet::Ink::dimension, theme);
    painter.setPen(QPen{ink, 1.0});
    for (int i = 0; i < kBarParts; ++i) {
        painter.setBrush(i % 2 == 0 ? ink : floor_ground(theme));
        painter.drawRect(QRectF{left + i * length_px / kBarParts, top, length_px / kBarParts, 5.0});
    }
    const QString figure = QString::fromStdString(ruler_figure(length_m, units_))
                           + (units_ == UnitSystem::metric ? QStringLiteral(" m") : QString{});
    painter.drawText(QRectF{left + length_px + 6.0, 0.0, width() * 1.0, double(height())},
                     Qt::AlignVCenter | Qt::AlignLeft, figure);
}

FloorFoot::FloorFoot(QWidget* parent) : QWidget{parent} {
    setCursor(Qt::ArrowCursor);
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(8, 3, 8, 3);
    row->setSpacing(8);
    auto* word = new QLabel{QStringLiteral("S&cale"), this};
    scale_ = new QComboBox{this};
    scale_->setEditable(true);
    scale_->setInsertPolicy(QComboBox::NoInsert);
    scale_->setMinimumContentsLength(17);
    scale_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    scale_->setAccessibleName(QStringLiteral("Scale of the floor on the screen"));
    scale_->lineEdit()->setAccessibleName(scale_->accessibleName());
    scale_->setToolTip(QStringLiteral("Drawing first: 1:50, 1/4 in = 1 ft, or one of your own"));
    scale_->setFocusPolicy(Qt::StrongFocus);
    scale_->setMaxVisibleItems(20);
    scale_->lineEdit()->installEventFilter(this);
    word->setBuddy(scale_);
    hint_ = new QLabel{this};
    hint_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
    bar_ = new NorthAndBar{this};
    row->addWidget(word);
    row->addWidget(scale_);
    row->addWidget(hint_, 1);
    row->addWidget(bar_);
    connect(scale_, &QComboBox::textActivated, this, [this](const QString& name) {
        Q_EMIT scale_wanted(name);
        Q_EMIT done();
    });
    connect(scale_->lineEdit(), &QLineEdit::returnPressed, this, &FloorFoot::done);
    connect(scale_->lineEdit(), &QLineEdit::editingFinished, this, [this] {
        if (scale_->currentText() != words_) {
            Q_EMIT scale_wanted(scale_->currentText());
        }
    });
}

void FloorFoot::offer(const catalogue::Catalogue& catalogue, UnitSystem units) {
    const QSignalBlocker quiet{scale_};
    scale_->clear();
    for (const catalogue::DrawingScale& scale : catalogue.scales) {
        if (scale.system == units && scale.ratio >= 5.0) {
            scale_->addItem(QString::fromStdString(scale.name));
        }
    }
    scale_->setEditText(words_);
}

void FloorFoot::show_scale(const QString& words, double px_per_m, UnitSystem units, Angle north) {
    words_ = words;
    const QSignalBlocker quiet{scale_};
    scale_->setEditText(words);
    bar_->show_scale(px_per_m, units, north);
}

QString FloorFoot::scale() const {
    return words_;
}

void FloorFoot::show_hint(const QString& hint) {
    if (hint != whole_hint_) {
        whole_hint_ = hint;
        elide_hint();
    }
}

void FloorFoot::elide_hint() {
    const QFontMetrics metrics = hint_->fontMetrics();
    const bool has_room = hint_->width() > metrics.averageCharWidth() * kLeastHint;
    hint_->setText(has_room ? on_two_lines(whole_hint_, metrics, hint_->width()) : QString{});
    hint_->setToolTip(whole_hint_);
}

void FloorFoot::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    const Theme theme = theme_of(palette());
    painter.fillRect(rect(), panel_ground(theme));
    paint_hairline(painter, {0.0, 0.5, double(width()), 0.5}, seam_hue(theme));
}

void FloorFoot::resizeEvent(QResizeEvent*) {
    elide_hint();
}

bool FloorFoot::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress
        && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        scale_->setEditText(words_);
        Q_EMIT done();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace throwline::ui
