#include "ui/stores/own_item_form.h"

#include "base/length_text.h"
#include "base/words.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

using catalogue::StockShape;
using catalogue::StockUse;

struct UseWords {
    StockUse use;
    const char* words;
};
constexpr UseWords kUses[]{{StockUse::seat, QT_TRANSLATE_NOOP("OwnItemForm", "to sit on")},
                           {StockUse::table, QT_TRANSLATE_NOOP("OwnItemForm", "a table")},
                           {StockUse::storage, QT_TRANSLATE_NOOP("OwnItemForm", "to keep things")},
                           {StockUse::bed, QT_TRANSLATE_NOOP("OwnItemForm", "a bed")},
                           {StockUse::appliance, QT_TRANSLATE_NOOP("OwnItemForm", "an appliance")},
                           {StockUse::flat, QT_TRANSLATE_NOOP("OwnItemForm", "a flat")},
                           {StockUse::platform, QT_TRANSLATE_NOOP("OwnItemForm", "a platform")},
                           {StockUse::set_dressing, QT_TRANSLATE_NOOP("OwnItemForm", "dressing")},
                           {StockUse::support, QT_TRANSLATE_NOOP("OwnItemForm", "a box or stand")}};

struct ShapeWords {
    StockShape shape;
    const char* words;
};
constexpr ShapeWords kShapes[]{{StockShape::box, QT_TRANSLATE_NOOP("OwnItemForm", "square")},
                               {StockShape::round, QT_TRANSLATE_NOOP("OwnItemForm", "round")},
                               {StockShape::stairs, QT_TRANSLATE_NOOP("OwnItemForm", "steps")}};

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

} // namespace

OwnItemForm::OwnItemForm(const catalogue::StockItem& item, UnitSystem units, Keep keep,
                         QWidget* parent)
    : QDialog{parent}, item_{item}, units_{units}, keep_{std::move(keep)} {
    setWindowTitle(item.name.empty() ? tr("Own item") : tr("Own item: %1").arg(text(item.name)));
    auto* rows = new QVBoxLayout{this};
    auto* form = new QFormLayout;
    rows->addLayout(form);
    const auto shown_or_empty = [&](Length length) {
        return length > Length{} ? text(shown(length, units)) : QString{};
    };
    const QString units_tip = tr("In any unit; metres, feet and inches");
    add_field(*form, "name", tr("&Name"), text(item.name), tr("As it is to stand on the plan"));
    use_ = new QComboBox{this};
    for (const UseWords& use : kUses) {
        use_->addItem(tr(use.words), static_cast<int>(use.use));
    }
    use_->setCurrentIndex(use_->findData(static_cast<int>(item.use)));
    form->addRow(tr("It &is"), use_);
    shape_ = new QComboBox{this};
    for (const ShapeWords& shape : kShapes) {
        shape_->addItem(tr(shape.words), static_cast<int>(shape.shape));
    }
    shape_->setCurrentIndex(shape_->findData(static_cast<int>(item.shape)));
    form->addRow(tr("From a&bove"), shape_);
    add_field(*form, "width", tr("&Width"), shown_or_empty(item.width), units_tip);
    add_field(*form, "depth", tr("&Depth"), shown_or_empty(item.depth),
              tr("Not asked of what is round"));
    add_field(*form, "height", tr("&Height"), shown_or_empty(item.height), units_tip);
    add_field(*form, "seat", tr("&Seat or step at"), shown_or_empty(item.seat_height),
              tr("How high one sits or stands on it; empty where nobody does"));
    add_field(*form, "mass", tr("&Mass, kg"),
              item.mass_kg > 0.0 ? QLocale{}.toString(item.mass_kg) : QString{},
              tr("Kilograms; empty when not known"));
    why_ = new QLabel{this};
    why_->setWordWrap(true);
    why_->hide();
    rows->addWidget(why_);
    auto* buttons = new QDialogButtonBox{this};
    buttons->addButton(tr("&Keep"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("&Leave it"), QDialogButtonBox::RejectRole);
    rows->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnItemForm::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &OwnItemForm::reject);
}

QLineEdit* OwnItemForm::add_field(QFormLayout& form, const char* name, const QString& words,
                                  const QString& value, const QString& tip) {
    auto* line = new QLineEdit{value, this};
    line->setObjectName(QLatin1String{name});
    line->setToolTip(tip);
    form.addRow(words, line);
    line->setAccessibleName(QString{words}.remove(QLatin1Char{'&'}));
    return line;
}

QLineEdit& OwnItemForm::field(const char* name) const {
    return *findChild<QLineEdit*>(QLatin1String{name});
}

void OwnItemForm::refuse(const QString& why) {
    why_->setText(why);
    why_->show();
}

bool OwnItemForm::read(const char* name, Length& length) {
    QLineEdit& line = field(name);
    const auto parsed = parse_length(line.text().trimmed().toStdString(), {units_, true});
    if (!parsed) {
        refuse(text(capitalised(parsed.error().message)));
        line.setFocus();
        return false;
    }
    length = *parsed;
    return true;
}

std::optional<catalogue::StockItem> OwnItemForm::typed() {
    catalogue::StockItem item = item_;
    item.name = field("name").text().trimmed().toStdString();
    item.use = static_cast<StockUse>(use_->currentData().toInt());
    item.shape = static_cast<StockShape>(shape_->currentData().toInt());
    if (!read("width", item.width) || !read("height", item.height)) {
        return std::nullopt;
    }
    item.depth = item.width;
    if (item.shape != StockShape::round && !read("depth", item.depth)) {
        return std::nullopt;
    }
    item.seat_height = Length{};
    if (!field("seat").text().trimmed().isEmpty() && !read("seat", item.seat_height)) {
        return std::nullopt;
    }
    const QString mass = field("mass").text().trimmed();
    bool is_number = true;
    item.mass_kg = mass.isEmpty() ? 0.0 : QLocale{}.toDouble(mass, &is_number);
    if (!is_number) {
        item.mass_kg = QLocale::c().toDouble(mass, &is_number);
    }
    if (!is_number) {
        refuse(tr("\"%1\" is no mass; type kilograms, such as 12.5").arg(mass));
        field("mass").setFocus();
        return std::nullopt;
    }
    return item;
}

void OwnItemForm::accept() {
    const auto item = typed();
    if (!item) {
        return;
    }
    const QString why = keep_(*item);
    if (why.isEmpty()) {
        QDialog::accept();
    } else {
        refuse(why);
    }
}

} // namespace throwline::ui
