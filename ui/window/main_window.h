#pragma once
// The window: title band, shelf, sheet or start page, panel, foot; and every action with its key.

#include "ui/document/document.h"
#include "ui/document/view_state.h"

#include <QMainWindow>

class QStackedWidget;

namespace shaftwright::ui {

class SelectionPanel;
class SheetView;
class Shelf;
class StartPage;
class StatusBar;
class TablesDock;
class TitleBand;

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    /// Analyses with the generic catalogue.
    explicit MainWindow(QWidget* parent = nullptr);
    /// With another analyser, for tests.
    explicit MainWindow(Document::Analyser analyser, QWidget* parent = nullptr);

    [[nodiscard]] Document& document() { return m_document; }
    [[nodiscard]] ViewState& view() { return m_view; }
    [[nodiscard]] SheetView& sheet() { return *m_sheet; }
    [[nodiscard]] Shelf& shelf() { return *m_shelf; }
    [[nodiscard]] SelectionPanel& panel() { return *m_panel; }
    [[nodiscard]] StatusBar& foot() { return *m_foot; }
    /// Made when it is first asked for.
    [[nodiscard]] TablesDock& tables();

    /// False: the file cannot be used; the start page says why.
    bool openFile(const QString& file);
    bool saveTo(const QString& file);
    /// Asks when there are unsaved changes; false: the user stays.
    bool mayLeave();

protected:
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void build();
    void buildActions();
    void refresh();
    void openDialog();
    bool save();
    bool saveAs();
    void saveReport();
    void saveDrawing();
    void tellNotWritten(const QString& head, const QString& file, const QString& cause);
    /// Where a new file of the document would stand.
    [[nodiscard]] QString proposedFile(const QString& suffix) const;
    void newDocument();
    void oneBearing();
    void copySelection();
    void pasteClipboard();
    void stepSelectedSize(int step);
    void showKeys();
    void togglePanel();
    [[nodiscard]] QStringList samples() const;

    Document m_document;
    ViewState m_view;
    TitleBand* m_band = nullptr;
    Shelf* m_shelf = nullptr;
    QStackedWidget* m_middle = nullptr;
    SheetView* m_sheet = nullptr;
    StartPage* m_start = nullptr;
    SelectionPanel* m_panel = nullptr;
    StatusBar* m_foot = nullptr;
    TablesDock* m_tables = nullptr;
    QMenu* m_menu = nullptr;
    QAction *m_undo_action = nullptr, *m_redo_action = nullptr;
    QList<QAction*> m_selection_actions, m_document_actions;
    bool m_panel_wanted = true;
};

} // namespace shaftwright::ui
