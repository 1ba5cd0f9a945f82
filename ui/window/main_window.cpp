#include "ui/window/main_window.h"

#include "core/analysis/analyse.h"
#include "core/catalogue/catalogue.h"
#include "core/document/document.h"
#include "core/edit/edit.h"
#include "core/selection/judge.h"
#include "ui/document/actions.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/panels/selection_panel.h"
#include "ui/sheet/sheet_view.h"
#include "ui/tables/tables_dock.h"
#include "ui/widgets/focus_ring.h"
#include "ui/widgets/quantity_field.h"
#include "ui/widgets/theme.h"
#include "ui/window/exports.h"
#include "ui/window/one_bearing_dialog.h"
#include "ui/window/shelf.h"
#include "ui/window/start_page.h"
#include "ui/window/status_bar.h"
#include "ui/window/title_band.h"

#include <QActionGroup>
#include <QApplication>
#include <QClipboard>
#include <QCloseEvent>
#include <QDir>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMessageBox>
#include <QMimeData>
#include <QSettings>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace shaftwright::ui {

namespace {

constexpr const char* clipboardType = "application/x-shaftwright-piece";
constexpr const char* fileFilter = QT_TRANSLATE_NOOP("MainWindow", "Arrangements (*.shaftwright)");

Assessment analyseWithGenericCatalogue(const Arrangement& arrangement)
{
    Catalogues catalogues;
    catalogues.list.push_back(&genericCatalogue());
    return analyse(arrangement, catalogues);
}

} // namespace

MainWindow::MainWindow(QWidget* parent) : MainWindow(&analyseWithGenericCatalogue, parent) {}

MainWindow::MainWindow(Document::Analyser analyser, QWidget* parent) : QMainWindow(parent), m_document(std::move(analyser))
{
    build();
    buildActions();
    connect(&m_document, &Document::changed, this, &MainWindow::refresh);
    connect(&m_document, &Document::selectionChanged, this, &MainWindow::refresh);
    connect(&m_view, &ViewState::changed, this, &MainWindow::refresh);
    connect(&m_document, &Document::refused, this, [this](const QString& words) { m_foot->hint(words); });
    connect(&Theme::instance(), &Theme::changed, this, [this] { refresh(); });
    m_document.reset(emptyArrangement());
    refresh();
}

void MainWindow::build()
{
    setMinimumSize(1024, 680);
    setAcceptDrops(true);
    auto* central = new QWidget(this);
    auto* column = new QVBoxLayout(central);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_band = new TitleBand(m_document, m_view, central);
    column->addWidget(m_band);
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    m_shelf = new Shelf(central);
    row->addWidget(m_shelf);
    m_middle = new QStackedWidget(central);
    m_sheet = new SheetView(m_document, m_view, m_middle);
    m_start = new StartPage(m_middle);
    m_middle->addWidget(m_sheet);
    m_middle->addWidget(m_start);
    row->addWidget(m_middle, 1);
    m_panel = new SelectionPanel(m_document, m_view, central);
    row->addWidget(m_panel);
    column->addLayout(row, 1);
    m_foot = new StatusBar(central);
    m_foot->setNote(tr("Generic catalogue: ratings computed from standard dimensions, not a maker’s"));
    column->addWidget(m_foot);
    setCentralWidget(central);
    new FocusRing(central);
    QWidget::setTabOrder(m_shelf, m_sheet);

    connect(m_shelf, &Shelf::dragged, m_sheet, &SheetView::shelfDragTo);
    connect(m_shelf, &Shelf::dropped, m_sheet, &SheetView::shelfDrop);
    connect(m_shelf, &Shelf::dragCancelled, m_sheet, &SheetView::shelfCancel);
    connect(m_shelf, &Shelf::put, m_sheet, &SheetView::insertAtHairline);
    connect(m_sheet, &SheetView::hinted, m_foot, &StatusBar::hint);
    connect(m_sheet, &SheetView::scaleChanged, this, [this] { m_foot->setScale(m_sheet->scaleRatio()); });
    connect(m_band, &TitleBand::caseAsked, this, [this] {
        m_document.select({});
        m_panel_wanted = true;
        refresh();
        m_panel->openFold(QStringLiteral("loadCases"));
    });
    connect(m_foot, &StatusBar::requirementsAsked, this, [this] { m_document.select({}); });
    connect(m_start, &StartPage::firstSegment, this, [this] {
        const Result<actions::Inserted> made = actions::insert(m_document.committed(), actions::ShelfItem::segment, 0.0);
        if (made.ok()) {
            m_document.push(made.value().value, made.value().text);
            m_document.select(made.value().subject);
            m_sheet->setFocus(Qt::OtherFocusReason);
        }
    });
    connect(m_start, &StartPage::twoBearings, this, [this] {
        m_document.push(plainTwoBearingShaft(), tr("Plain shaft on two bearings"));
        m_sheet->setFocus(Qt::OtherFocusReason);
    });
    connect(m_start, &StartPage::oneBearing, this, &MainWindow::oneBearing);
    connect(m_start, &StartPage::openOther, this, &MainWindow::openDialog);
    connect(m_start, &StartPage::openFile, this, [this](const QString& file) { openFile(file); });
    m_start->setRecent(Document::recentFiles());
    m_start->setSamples(samples());
}

QStringList MainWindow::samples() const
{
    const QString beside = QCoreApplication::applicationDirPath();
    for (const QString& place : {beside + QStringLiteral("/../share/shaftwright/samples"), beside + QStringLiteral("/../samples"),
                                 QStringLiteral(SHAFTWRIGHT_SAMPLES)}) {
        const QDir folder(place);
        QStringList files;
        for (const QFileInfo& info : folder.entryInfoList({QStringLiteral("*.shaftwright")}, QDir::Files, QDir::Name))
            files << info.absoluteFilePath();
        // Those that show most stand first.
        const QStringList first{QStringLiteral("gearbox-intermediate"), QStringLiteral("tide-mill-reducer"),
                                QStringLiteral("fan-overhung-belt"), QStringLiteral("worm-shaft"),
                                QStringLiteral("mixer-hollow-shaft"), QStringLiteral("saw-shaft-fails")};
        const auto rank = [&](const QString& file) {
            const qsizetype at = first.indexOf(QFileInfo(file).completeBaseName());
            return at < 0 ? first.size() : at;
        };
        std::stable_sort(files.begin(), files.end(), [&](const QString& a, const QString& b) { return rank(a) < rank(b); });
        if (!files.isEmpty())
            return files;
    }
    return {};
}

void MainWindow::buildActions()
{
    m_menu = new QMenu(this);
    m_menu->setObjectName(QStringLiteral("mainMenu"));
    const auto add = [this](QMenu* menu, const QString& name, const QString& text, const QList<QKeySequence>& keys, auto&& run) {
        QAction* action = menu->addAction(text);
        action->setObjectName(name);
        action->setShortcuts(keys);
        action->setShortcutContext(Qt::WindowShortcut);
        connect(action, &QAction::triggered, this, run);
        addAction(action);
        return action;
    };
    QMenu* file = m_menu->addMenu(tr("File"));
    add(file, QStringLiteral("file.new"), tr("New"), {QKeySequence::New}, [this] { newDocument(); });
    add(file, QStringLiteral("file.open"), tr("Open …"), {QKeySequence::Open}, [this] { openDialog(); });
    QMenu* recent = file->addMenu(tr("Recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] {
        recent->clear();
        for (const QString& name : Document::recentFiles())
            recent->addAction(QFileInfo(name).completeBaseName(), this, [this, name] {
                if (mayLeave())
                    openFile(name);
            });
        if (recent->isEmpty())
            recent->addAction(tr("None yet"))->setEnabled(false);
    });
    QMenu* sample_menu = file->addMenu(tr("Samples"));
    for (const QString& name : samples())
        sample_menu->addAction(QFileInfo(name).completeBaseName(), this, [this, name] {
            if (mayLeave())
                openFile(name);
        });
    sample_menu->menuAction()->setVisible(!sample_menu->isEmpty());
    file->addSeparator();
    add(file, QStringLiteral("file.save"), tr("Save"), {QKeySequence::Save}, [this] { save(); });
    add(file, QStringLiteral("file.saveAs"), tr("Save as …"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)}, [this] { saveAs(); });
    file->addSeparator();
    m_document_actions << add(file, QStringLiteral("file.report"), tr("Save report …"), {}, [this] { saveReport(); });
    m_document_actions << add(file, QStringLiteral("file.drawing"), tr("Save drawing …"), {}, [this] { saveDrawing(); });
    file->addSeparator();
    add(file, QStringLiteral("file.quit"), tr("Close the window"), {QKeySequence::Quit}, [this] { close(); });

    QMenu* edit = m_menu->addMenu(tr("Edit"));
    m_undo_action = add(edit, QStringLiteral("edit.undo"), tr("Undo"), {QKeySequence::Undo}, [this] { m_document.undoStack().undo(); });
    m_redo_action = add(edit, QStringLiteral("edit.redo"), tr("Redo"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)},
                        [this] { m_document.undoStack().redo(); });
    edit->addSeparator();
    m_selection_actions << add(edit, QStringLiteral("edit.cut"), tr("Cut"), {QKeySequence::Cut}, [this] {
        copySelection();
        m_sheet->deleteSelection();
    });
    m_selection_actions << add(edit, QStringLiteral("edit.copy"), tr("Copy"), {QKeySequence::Copy}, [this] { copySelection(); });
    add(edit, QStringLiteral("edit.paste"), tr("Paste at the hairline"), {QKeySequence::Paste}, [this] { pasteClipboard(); });
    m_selection_actions << add(edit, QStringLiteral("edit.duplicate"), tr("Duplicate"), {QKeySequence(Qt::CTRL | Qt::Key_D)},
                               [this] { m_sheet->duplicateSelection(); });
    m_selection_actions << add(edit, QStringLiteral("edit.delete"), tr("Delete"), {QKeySequence::Delete}, [this] { m_sheet->deleteSelection(); });
    edit->addSeparator();
    add(edit, QStringLiteral("edit.next"), tr("Select the next thing"), {QKeySequence(Qt::Key_PageDown)}, [this] { m_sheet->selectNext(1); });
    add(edit, QStringLiteral("edit.previous"), tr("Select the thing before"), {QKeySequence(Qt::Key_PageUp)}, [this] { m_sheet->selectNext(-1); });
    m_selection_actions << add(edit, QStringLiteral("edit.larger"), tr("Next larger bearing"), {QKeySequence(Qt::Key_BracketRight)},
                               [this] { stepSelectedSize(1); });
    m_selection_actions << add(edit, QStringLiteral("edit.smaller"), tr("Next smaller bearing"), {QKeySequence(Qt::Key_BracketLeft)},
                               [this] { stepSelectedSize(-1); });

    QMenu* insert = m_menu->addMenu(tr("Insert"));
    int group = 0;
    int number = 1;
    for (const actions::ShelfEntry& entry : actions::shelf()) {
        if (entry.group != group)
            insert->addSeparator();
        group = entry.group;
        QList<QKeySequence> keys;
        if (number <= 9)
            keys << QKeySequence(QStringLiteral("Ctrl+%1").arg(number));
        add(insert, QStringLiteral("insert.") + entry.name, entry.name, keys, [this, item = entry.item] { m_sheet->insertAtHairline(item); });
        ++number;
    }

    auto* insert_key = new QAction(this);
    insert_key->setObjectName(QStringLiteral("insert.menu"));
    insert_key->setShortcut(QKeySequence(Qt::Key_Insert));
    connect(insert_key, &QAction::triggered, this, [this, insert] {
        if (m_document.empty())
            return;
        const double x_mm = m_view.hairline_mm.value_or(m_document.committed().shaft.length_mm() / 2.0);
        insert->popup(m_sheet->mapToGlobal(m_sheet->pixelOf(x_mm).toPoint()));
    });
    addAction(insert_key);

    QMenu* show = m_menu->addMenu(tr("View"));
    add(show, QStringLiteral("view.in"), tr("Zoom in"), {QKeySequence(Qt::CTRL | Qt::Key_Plus), QKeySequence(Qt::CTRL | Qt::Key_Equal)}, [this] { m_sheet->zoomIn(); });
    add(show, QStringLiteral("view.out"), tr("Zoom out"), {QKeySequence(Qt::CTRL | Qt::Key_Minus)}, [this] { m_sheet->zoomOut(); });
    add(show, QStringLiteral("view.fit"), tr("Whole shaft"), {QKeySequence(Qt::CTRL | Qt::Key_0)}, [this] { m_sheet->fit(); });
    show->addSeparator();
    const auto plane = [&](const QString& name, const QString& text, drawing::Plane value, Qt::Key key) {
        add(show, name, text, {QKeySequence(Qt::ALT | key)}, [this, value] {
            m_view.plane = value;
            m_view.notify();
        });
    };
    plane(QStringLiteral("view.y"), tr("Plane y"), drawing::Plane::y, Qt::Key_Y);
    plane(QStringLiteral("view.z"), tr("Plane z"), drawing::Plane::z, Qt::Key_Z);
    plane(QStringLiteral("view.res"), tr("Resultants"), drawing::Plane::resultant, Qt::Key_R);
    show->addSeparator();
    add(show, QStringLiteral("view.sheet"), tr("Go to the sheet"), {QKeySequence(Qt::Key_F6)}, [this] { m_sheet->setFocus(Qt::ShortcutFocusReason); });
    add(show, QStringLiteral("view.panel"), tr("Go to the panel"), {QKeySequence(Qt::Key_F7)}, [this] { m_panel->focusFirst(); });
    add(show, QStringLiteral("view.fold"), tr("Fold the panel"), {QKeySequence(Qt::Key_F8)}, [this] { togglePanel(); });
    add(show, QStringLiteral("view.tables"), tr("Tables"), {QKeySequence(Qt::Key_F9)}, [this] {
        if (m_tables != nullptr && m_tables->isVisible() && m_tables->isAncestorOf(QApplication::focusWidget()))
            m_tables->hide();
        else
            tables().open();
    });
    show->addSeparator();
    QMenu* themes = show->addMenu(tr("Theme"));
    auto* theme_group = new QActionGroup(this);
    const auto theme = [&](const QString& word, const QString& text, ThemeChoice choice) {
        QAction* action = themes->addAction(text);
        action->setObjectName(QStringLiteral("theme.") + word);
        action->setCheckable(true);
        action->setChecked(Theme::instance().choice() == choice);
        theme_group->addAction(action);
        connect(action, &QAction::triggered, this, [word, choice] {
            QSettings().setValue(QStringLiteral("theme"), word);
            Theme::instance().setChoice(choice);
        });
    };
    theme(QStringLiteral("system"), tr("As the desktop"), ThemeChoice::system);
    theme(QStringLiteral("light"), tr("Light"), ThemeChoice::light);
    theme(QStringLiteral("dark"), tr("Dark"), ThemeChoice::dark);

    m_menu->addSeparator();
    add(m_menu, QStringLiteral("help.keys"), tr("Keys and gestures"), {QKeySequence(Qt::Key_F1)}, [this] { showKeys(); });

    const auto open_menu = [this] { m_menu->popup(m_band->menuButton()->mapToGlobal(QPoint(m_band->menuButton()->width() - m_menu->sizeHint().width(), 32))); };
    connect(m_band->menuButton(), &QAbstractButton::clicked, this, open_menu);
    auto* menu_key = new QAction(this);
    menu_key->setObjectName(QStringLiteral("menu.open"));
    menu_key->setShortcuts({QKeySequence(Qt::Key_F10), QKeySequence(Qt::ALT | Qt::Key_M)});
    connect(menu_key, &QAction::triggered, this, open_menu);
    addAction(menu_key);
    connect(m_band->undoButton(), &QAbstractButton::clicked, m_undo_action, &QAction::trigger);
    connect(m_band->redoButton(), &QAbstractButton::clicked, m_redo_action, &QAction::trigger);
}

void MainWindow::refresh()
{
    const bool empty = m_document.empty();
    if (empty && m_middle->currentWidget() != m_start) {
        m_start->setRecent(Document::recentFiles());
        m_middle->setCurrentWidget(m_start);
    } else if (!empty && m_middle->currentWidget() != m_sheet) {
        m_start->setComplaint({});
        m_middle->setCurrentWidget(m_sheet);
    }
    m_shelf->setVisible(!empty);
    m_panel->setVisible(!empty && m_panel_wanted);
    m_band->refresh();
    m_undo_action->setEnabled(m_document.undoStack().canUndo());
    m_redo_action->setEnabled(m_document.undoStack().canRedo());
    for (QAction* action : std::as_const(m_selection_actions))
        action->setEnabled(!m_document.selection().isEmpty());
    for (QAction* action : std::as_const(m_document_actions))
        action->setEnabled(!empty);
    if (!empty) {
        const Assessment& assessment = m_document.assessment();
        // What waits for a bearing is said as that, not as a requirement that is missed.
        QStringList without_bearing;
        int waiting = 0;
        for (const Support& support : m_document.shown().supports) {
            if (support.bearing && !support.bearing->rows.empty())
                continue;
            without_bearing << QString::fromStdString(support.id.value);
            for (const RequirementResult& result : assessment.requirements)
                waiting += !result.met && result.where == support.id.value ? 1 : 0;
        }
        m_foot->setRequirements(assessment.missed() - waiting, static_cast<int>(assessment.requirements.size()), without_bearing);
        m_foot->setScale(m_sheet->scaleRatio());
    } else {
        m_foot->setRequirements(0, 0);
        m_foot->setScale(0.0);
    }
    const QString name = m_document.name();
    setWindowTitle(QStringLiteral("%1[*] – Shaftwright").arg(name));
    setWindowModified(m_document.modified());
}

void MainWindow::resizeEvent(QResizeEvent* event)
{
    QMainWindow::resizeEvent(event);
    const bool narrow = width() < 1200;
    m_shelf->setNarrow(narrow);
    m_panel->setFixedWidth(narrow ? 316 : 344);
}

bool MainWindow::openFile(const QString& file)
{
    const QString trouble = m_document.open(file);
    if (trouble.isEmpty()) {
        m_start->setComplaint({});
        m_view.case_index = -1;
        m_view.ghost.reset();
        m_view.hairline_mm.reset();
        m_sheet->fit();
        refresh();
        return true;
    }
    const QString words = QFileInfo(file).fileName() + QLatin1Char('\n') + trouble;
    if (m_document.empty())
        m_start->setComplaint(words);
    else
        m_foot->hint(words.section(QLatin1Char('\n'), 0, 1).replace(QLatin1Char('\n'), QStringLiteral(": ")));
    return false;
}

bool MainWindow::saveTo(const QString& file)
{
    const QString trouble = m_document.save(file);
    if (!trouble.isEmpty()) {
        m_foot->hint(tr("Not saved: %1").arg(whyNotWritten(file, trouble)));
        tellNotWritten(tr("The arrangement was not saved"), file, whyNotWritten(file, trouble));
        return false;
    }
    refresh();
    return true;
}

void MainWindow::tellNotWritten(const QString& head, const QString& file, const QString& cause)
{
    auto* box = new QMessageBox(QMessageBox::Warning, tr("Not saved"), head,
                                QMessageBox::Ok, this);
    box->setObjectName(QStringLiteral("notWritten"));
    box->setTextFormat(Qt::PlainText);
    box->setInformativeText(QDir::toNativeSeparators(file) + QStringLiteral("\n\n") + cause + QStringLiteral("\n") +
                            tr("Choose another place."));
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->open();
}

QString MainWindow::proposedFile(const QString& suffix) const
{
    if (!m_document.file().isEmpty()) {
        const QFileInfo info(m_document.file());
        return info.absolutePath() + QLatin1Char('/') + info.completeBaseName() + suffix;
    }
    // A title becomes a name that every file system takes.
    QString name;
    for (const QChar c : QString::fromStdString(m_document.committed().title.title).toLower()) {
        if (c.isLetterOrNumber())
            name += c;
        else if (!name.isEmpty() && !name.endsWith(QLatin1Char('-')))
            name += QLatin1Char('-');
    }
    while (name.endsWith(QLatin1Char('-')))
        name.chop(1);
    return QDir::home().absoluteFilePath((name.isEmpty() ? tr("arrangement") : name) + suffix);
}

void MainWindow::saveReport()
{
    QString file = QFileDialog::getSaveFileName(this, tr("Save the report"), proposedFile(QStringLiteral("-report.html")),
                                                tr("Reports (*.html *.txt *.json)"));
    if (file.isEmpty())
        return;
    if (QFileInfo(file).suffix().isEmpty())
        file += QStringLiteral(".html");
    if (const QString trouble = writeReport(m_document, file); !trouble.isEmpty())
        tellNotWritten(tr("The report was not saved"), file, trouble);
}

void MainWindow::saveDrawing()
{
    QString file = QFileDialog::getSaveFileName(this, tr("Save the drawing"), proposedFile(QStringLiteral("-drawing.pdf")),
                                                tr("Drawings (*.pdf *.svg *.png)"));
    if (file.isEmpty())
        return;
    if (QFileInfo(file).suffix().isEmpty())
        file += QStringLiteral(".pdf");
    if (const QString trouble = writeDrawing(m_document, file); !trouble.isEmpty())
        tellNotWritten(tr("The drawing was not saved"), file, trouble);
}

bool MainWindow::save()
{
    return m_document.file().isEmpty() ? saveAs() : saveTo(m_document.file());
}

bool MainWindow::saveAs()
{
    QString file = QFileDialog::getSaveFileName(this, tr("Save as"), proposedFile(QStringLiteral(".shaftwright")), tr(fileFilter));
    if (file.isEmpty())
        return false;
    if (QFileInfo(file).suffix().isEmpty())
        file += QStringLiteral(".shaftwright");
    return saveTo(file);
}

bool MainWindow::mayLeave()
{
    if (!m_document.modified())
        return true;
    QMessageBox question(this);
    question.setObjectName(QStringLiteral("leaveQuestion"));
    question.setText(tr("The arrangement has changes that are not saved."));
    QPushButton* keep = question.addButton(tr("Save"), QMessageBox::AcceptRole);
    QPushButton* drop = question.addButton(tr("Discard changes"), QMessageBox::DestructiveRole);
    question.addButton(tr("Stay here"), QMessageBox::RejectRole);
    question.setDefaultButton(keep);
    question.exec();
    if (question.clickedButton() == static_cast<QAbstractButton*>(keep))
        return save();
    return question.clickedButton() == static_cast<QAbstractButton*>(drop);
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (mayLeave())
        event->accept();
    else
        event->ignore();
}

void MainWindow::newDocument()
{
    if (!mayLeave())
        return;
    m_document.reset(emptyArrangement());
    m_view.case_index = -1;
    refresh();
}

void MainWindow::openDialog()
{
    if (!mayLeave())
        return;
    const QString file = QFileDialog::getOpenFileName(this, tr("Open"), QFileInfo(m_document.file()).absolutePath(), tr(fileFilter));
    if (!file.isEmpty())
        openFile(file);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().toLocalFile().endsWith(QStringLiteral(".shaftwright")))
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && mayLeave())
        openFile(urls.front().toLocalFile());
}

void MainWindow::oneBearing()
{
    OneBearingDialog dialog(this);
    if (dialog.exec() == QDialog::Accepted) {
        m_document.push(dialog.arrangement(), tr("Loads of one bearing"));
        m_document.select(QStringLiteral("supports.B"));
        m_sheet->setFocus(Qt::OtherFocusReason);
    }
}

void MainWindow::copySelection()
{
    // A piece travels as a small arrangement of its own, so that another window can read it.
    const Arrangement& value = m_document.committed();
    const Subject what = subjectOf(m_document.selection());
    Arrangement piece;
    if (what.kind == SubjectKind::support) {
        if (const Support* support = findSupport(value, SupportId(what.id)))
            piece.supports.push_back(*support);
    } else if (what.kind == SubjectKind::part) {
        if (const Part* part = findPart(value, PartId(what.id)))
            piece.parts.push_back(*part);
    } else if (what.kind == SubjectKind::segment) {
        if (const Segment* segment = findSegment(value, SegmentId(what.id)))
            piece.shaft.segments.push_back(*segment);
    }
    if (piece == Arrangement{})
        return;
    auto* mime = new QMimeData;
    mime->setData(QString::fromLatin1(clipboardType), QByteArray::fromStdString(writeArrangement(piece)));
    QApplication::clipboard()->setMimeData(mime);
}

void MainWindow::pasteClipboard()
{
    const QMimeData* mime = QApplication::clipboard()->mimeData();
    if (mime == nullptr || !mime->hasFormat(QString::fromLatin1(clipboardType))) {
        m_foot->hint(tr("The clipboard holds no part, support or segment"));
        return;
    }
    const ReadResult read = readArrangement(mime->data(QString::fromLatin1(clipboardType)).toStdString(), "clipboard");
    if (!read.ok())
        return;
    const Arrangement& piece = *read.arrangement;
    const Arrangement& value = m_document.committed();
    const double x_mm = m_view.hairline_mm.value_or(value.shaft.length_mm() / 2.0);
    if (!piece.parts.empty()) {
        Part part = piece.parts.front();
        part.id = freePartId(value, part.body);
        part.x_mm = x_mm;
        if (part.drive && part.drive->takes_remaining) {
            for (const Part& other : value.parts) {
                // Only one part can take what remains.
                if (other.drive && other.drive->takes_remaining && part.drive->takes_remaining) {
                    part.drive->takes_remaining = false;
                    part.drive->sense_fixed = false; // the power of the copy stays open, a finding asks for it
                }
            }
        }
        const QString path = pathOf(part.id);
        if (m_document.push(addPart(value, std::move(part)), tr("Paste")))
            m_document.select(path);
    } else if (!piece.supports.empty()) {
        Support support = piece.supports.front();
        support.id = freeSupportId(value);
        support.name = support.id.value;
        support.x_mm = x_mm;
        const QString path = pathOf(support.id);
        if (m_document.push(addSupport(value, std::move(support)), tr("Paste")))
            m_document.select(path);
    } else if (!piece.shaft.segments.empty()) {
        Segment segment = piece.shaft.segments.front();
        segment.id = freeSegmentId(value);
        std::size_t at = 0;
        while (at < value.shaft.segments.size() && segmentStart_mm(value.shaft, at) < x_mm)
            ++at;
        const QString path = pathOf(segment.id);
        if (m_document.push(insertSegment(value, at, std::move(segment)), tr("Paste")))
            m_document.select(path);
    }
}

void MainWindow::stepSelectedSize(int step)
{
    const Subject what = subjectOf(m_document.selection());
    const Support* support = what.kind == SubjectKind::support ? findSupport(m_document.committed(), SupportId(what.id)) : nullptr;
    if (support == nullptr || !support->bearing) {
        m_foot->hint(tr("Select a support with a bearing to step its size"));
        return;
    }
    Catalogues catalogues;
    catalogues.list.push_back(&genericCatalogue());
    const double seat = shaftDiameterAt_mm(m_document.committed().shaft, support->x_mm);
    const auto next = stepSize(*support->bearing, step, seat, catalogues);
    if (!next) {
        m_foot->hint(step > 0 ? tr("No larger size of this family on this seat") : tr("No smaller size of this family on this seat"));
        return;
    }
    m_document.push(setBearing(m_document.committed(), support->id, *next),
                    tr("Take %1 at %2").arg(QString::fromStdString(next->designation()), QString::fromStdString(support->id.value)));
}

TablesDock& MainWindow::tables()
{
    if (m_tables == nullptr) {
        m_tables = new TablesDock(m_document, this);
        addDockWidget(Qt::BottomDockWidgetArea, m_tables);
        m_tables->hide();
    }
    return *m_tables;
}

void MainWindow::togglePanel()
{
    m_panel_wanted = !m_panel_wanted;
    refresh();
}

void MainWindow::showKeys()
{
    QMessageBox box(this);
    box.setObjectName(QStringLiteral("keys"));
    box.setWindowTitle(tr("Keys and gestures"));
    box.setTextFormat(Qt::RichText);
    const QList<std::pair<QString, QString>> rows{
        {tr("Drag a part, support or shoulder"), tr("moves it; Ctrl: no snapping, Shift at a shoulder: the rest moves along")},
        {tr("Double click a number"), tr("type its value; Enter takes it, Esc leaves it, Tab goes to the next")},
        {tr("Arrow keys"), tr("nudge 1 mm; Shift 10 mm, Alt 0.1 mm")},
        {tr("Page up, page down"), tr("select the thing before, the next thing")},
        {tr("Enter"), tr("type the place or diameter of the selection")},
        {tr("Insert"), tr("what can be put at the hairline")},
        {tr("[ and ]"), tr("smaller and larger bearing at the selected support")},
        {tr("Ctrl and wheel"), tr("zoom; 0 shows the whole shaft")},
        {tr("Esc"), tr("ends a drag without a trace, then lets go of the selection")},
        {tr("F6, F7, F8"), tr("sheet, panel, fold the panel")},
    };
    QString text = QStringLiteral("<table cellspacing='6'>");
    for (const auto& [key, meaning] : rows)
        text += QStringLiteral("<tr><td><b>%1</b>&nbsp;&nbsp;</td><td>%2</td></tr>").arg(key.toHtmlEscaped(), meaning.toHtmlEscaped());
    box.setText(text + QStringLiteral("</table>"));
    box.exec();
}

} // namespace shaftwright::ui
