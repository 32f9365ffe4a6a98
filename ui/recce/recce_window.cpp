#include "ui/recce/recce_window.h"

#include "ui/look/lozenge.h"
#include "ui/recce/recce_delegate.h"
#include "ui/recce/recce_model.h"
#include "ui/recce/recce_picture.h"
#include "ui/recce/recce_table.h"

#include <QClipboard>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSplitter>
#include <QTabWidget>
#include <QTextBlock>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

/// Between the last key and solving, so that half a number is not taken for one.
constexpr int kPause_ms = 150;

QString text_of(const std::string& words) {
    return QString::fromStdString(words);
}

QString item(const QString& mark, const std::string& sentence) {
    return QStringLiteral("<p style='margin:3px 0'>%1%2</p>")
        .arg(mark, text_of(sentence).toHtmlEscaped());
}

QString heading(const QString& words) {
    return QStringLiteral("<p style='margin:6px 0 2px 0'><b>%1</b></p>").arg(words);
}

} // namespace

RecceWindow::RecceWindow(Desk& desk, QWidget* parent) : QWidget{parent, Qt::Window}, desk_{desk} {
    setWindowTitle(tr("Recce"));
    setAccessibleName(tr("Recce"));
    resize(1120, 680);
    model_ = new RecceModel{this};
    left_ = new QTabWidget{this};
    left_->setDocumentMode(true);
    left_->setAccessibleName(tr("Readings"));
    add_page();
    add_table();
    left_->addTab(table_, tr("&Table"));
    left_->addTab(page_, tr("&Page"));
    auto* right = new QWidget{this};
    add_right(right);
    auto* halves = new QSplitter{this};
    halves->addWidget(left_);
    halves->addWidget(right);
    halves->setSizes({590, 530});
    halves->setChildrenCollapsible(false);
    auto* rows = new QVBoxLayout{this};
    rows->addWidget(halves, 1);
    rows->addWidget(foot());
    pause_.setSingleShot(true);
    pause_.setInterval(kPause_ms);
    connect(&pause_, &QTimer::timeout, this, &RecceWindow::ask);
    connect(&worker_, &RecceWorker::seen, this, &RecceWindow::take);
    connect(&desk_, &Desk::plan_changed, this, &RecceWindow::load_survey);
    connect(picture_, &ReccePicture::resized, &pause_, qOverload<>(&QTimer::start));
    load_survey();
}

RecceWindow::~RecceWindow() = default;

// Its parts -----------------------------------------------------------------------------------

void RecceWindow::add_page() {
    page_ = new QPlainTextEdit{left_};
    page_->setAccessibleName(tr("Readings as lines"));
    page_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    page_->setTabChangesFocus(true);
    page_->setLineWrapMode(QPlainTextEdit::WidgetWidth);
    page_->setPlaceholderText(
        tr("corners A B C D\nA-B 14ft 7in\nB-C 3.05 m\nA-C 17' 8\"\nheight 8ft 2in"));
    connect(page_, &QPlainTextEdit::textChanged, this, &RecceWindow::text_changed);
}

void RecceWindow::add_table() {
    table_ = new RecceTable{left_};
    table_->setAccessibleName(tr("Readings as a table"));
    table_->setModel(model_);
    table_->setItemDelegate(new RecceDelegate{table_});
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed
                            | QAbstractItemView::AnyKeyPressed
                            | QAbstractItemView::SelectedClicked);
    table_->setTabKeyNavigation(true);
    table_->setWordWrap(false);
    table_->setShowGrid(true);
    table_->verticalHeader()->setDefaultSectionSize(table_->fontMetrics().height() + 8);
    table_->verticalHeader()->setToolTip(tr("Line of the page"));
    QHeaderView& head = *table_->horizontalHeader();
    head.setStretchLastSection(true);
    head.setHighlightSections(false);
    head.setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    const int em = table_->fontMetrics().horizontalAdvance(QLatin1Char{'m'});
    for (const auto& [column, width] :
         {std::pair{RecceModel::kind_column, 7}, std::pair{RecceModel::from_column, 4},
          std::pair{RecceModel::to_column, 4}, std::pair{RecceModel::reading_column, 10},
          std::pair{RecceModel::note_column, 5}}) {
        table_->setColumnWidth(column, width * em);
    }
    table_->installEventFilter(this);
    connect(model_, &RecceModel::text_wanted, this, &RecceWindow::set_text);
}

void RecceWindow::add_right(QWidget* right) {
    picture_ = new ReccePicture{right};
    told_ = new QTextBrowser{right};
    told_->setAccessibleName(tr("What the readings say"));
    told_->setFrameShape(QFrame::NoFrame);
    told_->setOpenLinks(false);
    connect(told_, &QTextBrowser::anchorClicked, this,
            [this](const QUrl& link) { show_line(link.toString().toInt()); });
    auto* halves = new QSplitter{Qt::Vertical, right};
    halves->addWidget(picture_);
    halves->addWidget(told_);
    halves->setSizes({430, 190});
    halves->setChildrenCollapsible(false);
    auto* column = new QVBoxLayout{right};
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(halves);
}

QWidget* RecceWindow::foot() {
    auto* foot = new QWidget{this};
    auto* row = new QHBoxLayout{foot};
    row->setContentsMargins(0, 0, 0, 0);
    remarks_ = new QLabel{foot};
    remarks_->setWordWrap(true);
    remarks_->setAccessibleName(tr("Remarks"));
    use_ = new QPushButton{tr("&Use as the room"), foot};
    use_->setToolTip(tr("Puts the room as read into the plan; one step, which can be undone"));
    connect(use_, &QPushButton::clicked, this, &RecceWindow::use_as_room);
    auto* close = new QPushButton{tr("&Close"), foot};
    connect(close, &QPushButton::clicked, this, &QWidget::close);
    row->addWidget(remarks_, 1);
    row->addWidget(use_);
    row->addWidget(close);
    return foot;
}

// The text ------------------------------------------------------------------------------------

std::string RecceWindow::text() const {
    return page_->toPlainText().toStdString();
}

/// One insertion, so that undoing on the page takes back what the table did.
void RecceWindow::set_text(const QString& text) {
    QTextCursor cursor{page_->document()};
    cursor.select(QTextCursor::Document);
    cursor.insertText(text);
}

/// The plan's survey is shown as long as nothing else was typed.
void RecceWindow::load_survey() {
    if (text() == loaded_) {
        const auto& survey = desk_.plan()->survey;
        loaded_ = survey ? survey::recce_text(*survey) : std::string{};
        page_->setPlainText(text_of(loaded_));
        loaded_ = text();
        ask();
    }
    Q_EMIT readings_changed();
}

std::string RecceWindow::readings() const {
    const std::string typed = text();
    const bool is_in_plan =
        typed == loaded_ || (typed == used_ && desk_.plan()->survey == used_survey_);
    return is_in_plan ? std::string{} : typed;
}

void RecceWindow::text_changed() {
    model_->set_text(text());
    remarks_->clear();
    pause_.start();
    tell();
    Q_EMIT readings_changed();
}

void RecceWindow::ask() {
    worker_.ask({text(), desk_.plan(), desk_.catalogue(), picture_->size_mm()});
}

bool RecceWindow::is_settled() const {
    return seen_ != nullptr && !worker_.is_working() && seen_->question.text == text();
}

void RecceWindow::take(std::shared_ptr<const RecceSeen> answer) {
    seen_ = std::move(answer);
    if (is_settled()) {
        model_->set_told(seen_->told);
    }
    tell();
}

// What is said --------------------------------------------------------------------------------

void RecceWindow::tell() {
    const bool settled = is_settled();
    use_->setEnabled(settled && seen_->told.result.has_value());
    if (!settled) {
        picture_->show_drawing(nullptr, false);
        return;
    }
    const survey::RecceTold& told = seen_->told;
    picture_->show_drawing(seen_->drawing, told.result.has_value());
    QString words;
    if (text().empty()) {
        words = tr("Name the corners in walking order, then type what the tape says. The room "
                   "draws itself as soon as the readings settle its shape.");
    } else if (!told.errors.empty()) {
        words = text_of(told.errors.front().message);
    } else if (!told.result && !told.wanted.empty()) {
        words = text_of(told.wanted.front());
    }
    picture_->show_words(words);
    told_->setHtml(html_of_told());
    tell_page_errors();
}

QString RecceWindow::html_of_told() const {
    const survey::RecceTold& told = seen_->told;
    const Theme theme = theme_of(palette());
    const QString mark = QStringLiteral("<span style='color:%1'>\u25C6 </span>")
                             .arg(severity_hue(checks::Severity::error, theme).name());
    QString html;
    if (!told.errors.empty() && !text().empty()) {
        html += heading(tr("Not understood"));
        for (const Error& error : told.errors) {
            const QString line = error.place.line > 0
                                     ? QStringLiteral("<a href='%1'>%2</a> ")
                                           .arg(error.place.line)
                                           .arg(tr("Line %1:").arg(error.place.line))
                                     : QString{};
            html += item(mark + line, error.message);
        }
    }
    if (!told.wanted.empty()) {
        html += heading(tr("To measure"));
        for (std::size_t i = 0; i < told.wanted.size(); ++i) {
            const bool has_mark = static_cast<int>(i) < told.doubtful;
            html += item(has_mark ? QStringLiteral("%1<b>%2</b> ").arg(mark).arg(i + 1)
                                  : QStringLiteral("\u2013 "),
                         told.wanted[i]);
        }
    }
    for (const std::string& sentence : told.remarks) {
        html += item({}, sentence);
    }
    return html;
}

void RecceWindow::tell_page_errors() {
    QList<QTextEdit::ExtraSelection> marks;
    const QColor hue = severity_hue(checks::Severity::error, theme_of(palette()));
    const auto mark_line = [&](int line, int column) {
        QTextEdit::ExtraSelection mark;
        const QTextBlock block = page_->document()->findBlockByNumber(line - 1);
        mark.cursor = QTextCursor{block};
        mark.cursor.setPosition(block.position() + std::min(column, block.length() - 1));
        mark.cursor.movePosition(QTextCursor::EndOfBlock, QTextCursor::KeepAnchor);
        if (!mark.cursor.hasSelection()) {
            mark.cursor.movePosition(QTextCursor::StartOfBlock, QTextCursor::KeepAnchor);
        }
        mark.format.setUnderlineStyle(QTextCharFormat::WaveUnderline);
        mark.format.setUnderlineColor(hue);
        marks.append(mark);
    };
    for (const Error& error : seen_->told.errors) {
        if (error.place.line > 0) {
            mark_line(error.place.line, std::max(0, error.place.column - 1));
        }
    }
    for (std::size_t i = 0; i < seen_->told.verdicts.size(); ++i) {
        if (seen_->told.verdicts[i].verdict == survey::Verdict::wrong) {
            mark_line(seen_->told.rows[i].line, 0);
        }
    }
    page_->setExtraSelections(marks);
}

void RecceWindow::show_line(int line) {
    const int row = model_->row_on_line(line);
    if (row >= 0) {
        table_->setCurrentIndex(model_->index(row, RecceModel::reading_column));
    }
    page_->setTextCursor(QTextCursor{page_->document()->findBlockByNumber(line - 1)});
    left_->currentWidget()->setFocus();
}

bool RecceWindow::use_as_room() {
    if (!is_settled() || !seen_->told.result) {
        return false;
    }
    const auto made = survey::room_in(*desk_.plan(), *seen_->told.result, seen_->told.read->units);
    if (!made) {
        QStringList sentences;
        for (const Error& error : made.error()) {
            sentences.append(text_of(error.message));
        }
        remarks_->setText(sentences.join(QStringLiteral(" ")));
        return false;
    }
    QStringList sentences{tr("The room is in the plan.")};
    for (const std::string& remark : made->remarks) {
        sentences.append(text_of(remark));
    }
    // From now on what is typed is the user's own: the plan's wording of it does not replace it.
    loaded_.clear();
    used_ = text();
    used_survey_ = made->plan.survey;
    const bool taken = desk_.take(edit::Step{"Room from recce", made->plan, {}});
    Q_EMIT readings_changed();
    remarks_->setText(taken ? sentences.join(QStringLiteral(" ")) : tr("The room was not taken."));
    return taken;
}

bool RecceWindow::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_ && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Delete) {
            model_->take_out(table_->currentIndex().row());
            return true;
        }
        if (key->matches(QKeySequence::Undo)) {
            page_->undo();
            return true;
        }
        if (key->matches(QKeySequence::Redo)) {
            page_->redo();
            return true;
        }
        if (key->matches(QKeySequence::Paste)) {
            paste_into_table();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

/// Lines from a message or a notebook's scan go behind those that there are.
void RecceWindow::paste_into_table() {
    QTextCursor cursor{page_->document()};
    cursor.movePosition(QTextCursor::End);
    if (!text().empty() && text().back() != '\n') {
        cursor.insertText(QStringLiteral("\n"));
    }
    cursor.insertText(QGuiApplication::clipboard()->text());
}

void RecceWindow::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && seen_ != nullptr) {
        tell();
    }
}

} // namespace throwline::ui
