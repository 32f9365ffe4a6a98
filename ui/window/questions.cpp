#include "ui/window/questions.h"

#include "ui/look/save_path.h"

#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

namespace throwline::ui {

namespace {

/// More sentences than this are counted, not told.
constexpr qsizetype kMostTold = 8;

QString filter() {
    return QObject::tr("Plans (*.json);;All files (*)");
}

QString bulleted(const QStringList& sentences) {
    QStringList lines;
    for (const QString& sentence : sentences.first(std::min(sentences.size(), kMostTold))) {
        lines << QStringLiteral("\u2013 ") + sentence;
    }
    if (sentences.size() > kMostTold) {
        lines << QObject::tr("\u2013 and %1 more").arg(sentences.size() - kMostTold);
    }
    return lines.join(QStringLiteral("\n"));
}

UnsavedAnswer ask_unsaved(QWidget* over, const QString& title) {
    QMessageBox box{QMessageBox::Question, QObject::tr("Not saved yet"),
                    QObject::tr("What was changed in \u201c%1\u201d is in no file yet.").arg(title),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, over};
    box.setDefaultButton(QMessageBox::Save);
    box.setEscapeButton(QMessageBox::Cancel);
    switch (box.exec()) {
    case QMessageBox::Save:
        return UnsavedAnswer::save;
    case QMessageBox::Discard:
        return UnsavedAnswer::discard;
    default:
        return UnsavedAnswer::cancel;
    }
}

ChangedAnswer ask_changed(QWidget* over, const QString& title, const QStringList& what) {
    QMessageBox box{
        QMessageBox::Warning, QObject::tr("Changed by somebody else"),
        QObject::tr("The file of \u201c%1\u201d is no longer as it was opened here.").arg(title),
        QMessageBox::NoButton, over};
    QStringList advice{QObject::tr(
        "Writing yours over it leaves theirs beside the file, with ~ at its end. Loading "
        "theirs drops what you did since you last saved.")};
    if (!what.isEmpty()) {
        advice.prepend(bulleted(what));
    }
    box.setInformativeText(advice.join(QStringLiteral("\n\n")));
    const QPushButton* keep =
        box.addButton(QObject::tr("Write mine over it"), QMessageBox::AcceptRole);
    const QPushButton* load =
        box.addButton(QObject::tr("Drop mine, load theirs"), QMessageBox::DestructiveRole);
    QPushButton* elsewhere =
        box.addButton(QObject::tr("Save mine elsewhere\u2026"), QMessageBox::ActionRole);
    QPushButton* cancel = box.addButton(QMessageBox::Cancel);
    box.setDefaultButton(elsewhere);
    box.setEscapeButton(cancel);
    box.exec();
    if (box.clickedButton() == keep) {
        return ChangedAnswer::keep_mine;
    }
    if (box.clickedButton() == load) {
        return ChangedAnswer::load_theirs;
    }
    return box.clickedButton() == elsewhere ? ChangedAnswer::save_as : ChangedAnswer::cancel;
}

/// Whether to go on with what cannot be taken back; nothing else is as near at hand as not to.
bool may_be_dropped(QMessageBox& box, const QString& keep, const QString& drop) {
    QPushButton* keeps = box.addButton(keep, QMessageBox::RejectRole);
    const QPushButton* drops = box.addButton(drop, QMessageBox::DestructiveRole);
    box.setDefaultButton(keeps);
    box.setEscapeButton(keeps);
    box.exec();
    return box.clickedButton() == drops;
}

bool ask_to_drop_readings(QWidget* over) {
    QMessageBox box{QMessageBox::Question, QObject::tr("Readings not in the plan"),
                    QObject::tr("The readings that were typed are not in the plan yet."),
                    QMessageBox::NoButton, over};
    box.setInformativeText(
        QObject::tr("\u201cUse as the room\u201d in the recce puts them there."));
    return may_be_dropped(box, QObject::tr("Back to the recce"), QObject::tr("Drop them"));
}

bool ask_to_drop_left_work(QWidget* over, const QString& title) {
    QMessageBox box{QMessageBox::Question, QObject::tr("Work that was not put away"),
                    QObject::tr("What was left of \u201c%1\u201d cannot be had back once it is "
                                "dropped.")
                        .arg(title),
                    QMessageBox::NoButton, over};
    return may_be_dropped(box, QObject::tr("Keep it"), QObject::tr("Drop it"));
}

void tell(QWidget* over, const QString& heading, const QStringList& sentences) {
    QMessageBox box{QMessageBox::Information, QObject::tr("Throwline"), heading, QMessageBox::Ok,
                    over};
    box.setInformativeText(bulleted(sentences));
    if (sentences.size() > kMostTold) {
        box.setDetailedText(sentences.join(QStringLiteral("\n")));
    }
    box.exec();
}

} // namespace

Questions asked_in_dialogs() {
    Questions questions;
    questions.unsaved = ask_unsaved;
    questions.changed = ask_changed;
    questions.drop_readings = ask_to_drop_readings;
    questions.drop_left_work = ask_to_drop_left_work;
    questions.path_to_open = [](QWidget* over, const QString& folder) {
        return QFileDialog::getOpenFileName(over, QObject::tr("Open a plan"), folder, filter());
    };
    questions.path_to_save = [](QWidget* over, const QString& suggested) {
        return asked_path_to_save(over, QObject::tr("Save the plan as"), suggested,
                                  filter().split(QStringLiteral(";;")));
    };
    questions.picture_to_lay = [](QWidget* over, const QString& folder) {
        return QFileDialog::getOpenFileName(
            over, QObject::tr("Choose a scanned plan"), folder,
            QObject::tr("Pictures and PDF (*.png *.jpg *.jpeg *.pdf);;All files (*)"));
    };
    questions.tell = tell;
    return questions;
}

} // namespace throwline::ui
