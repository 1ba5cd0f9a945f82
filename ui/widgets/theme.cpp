#include "ui/widgets/theme.h"

#include <QApplication>
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QDBusVariant>
#include <QFileInfo>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <QPalette>
#include <QStyleFactory>

#include <algorithm>
#include <unistd.h>

namespace shaftwright::ui
{

namespace
{

const Tokens lightTokens{false,     "#E9E6DF", "#FCFBF7", "#F5F3ED", "#FFFFFF", "#1C2830", "#525D66",
                         "#5F6970", "#827F77", "#DAD6CB", "#EFECE4", "#7F8A91", "#F2F1EC", "#0A6A73",
                         "#DCEBEC", "#7E1712", "#8F5600", "#326744", "#F3DAD4", "#F6E8CB", "#DCE8DC"};
const Tokens darkTokens{true,      "#15191C", "#1D2226", "#1A1F22", "#23292E", "#E6E9E8", "#A5AEB3",
                        "#8B959B", "#76828A", "#343C42", "#262C31", "#808A90", "#262B30", "#5CC2CB",
                        "#1F3A3E", "#EE7A66", "#FFC24D", "#A6DDB0", "#43251E", "#3D311C", "#20342A"};

constexpr auto portalService = "org.freedesktop.portal.Desktop";
constexpr auto portalPath = "/org/freedesktop/portal/desktop";
constexpr auto portalInterface = "org.freedesktop.portal.Settings";
constexpr auto appearance = "org.freedesktop.appearance";
constexpr auto colourScheme = "color-scheme";

std::optional<bool> darkFromPortal(QVariant value)
{
    while (value.canConvert<QDBusVariant>() && value.metaType() == QMetaType::fromType<QDBusVariant>())
        value = value.value<QDBusVariant>().variant();
    bool ok = false;
    const uint wish = value.toUInt(&ok);
    if (!ok || wish == 0)
        return std::nullopt; // no preference
    return wish == 1;
}

bool sessionBusExists()
{
    // Asking for the bus without one makes the library start helpers; that costs time at start.
    return qEnvironmentVariableIsSet("DBUS_SESSION_BUS_ADDRESS") ||
           QFileInfo::exists(QStringLiteral("/run/user/%1/bus").arg(getuid()));
}

QString familyOr(const QString& wanted, const QString& fallback)
{
    return QFontDatabase::hasFamily(wanted) ? wanted : fallback;
}

} // namespace

/// Hears of changes of the desktop's colour scheme.
class PortalListener : public QObject
{
    Q_OBJECT
public:
    using QObject::QObject;

public slots:
    void settingChanged(const QString& space, const QString& key, const QDBusVariant& value)
    {
        if (space == QLatin1String(appearance) && key == QLatin1String(colourScheme))
            Theme::instance().portalSays(darkFromPortal(value.variant()));
    }
};

Theme& Theme::instance()
{
    static Theme theme;
    return theme;
}

Theme::Theme() : m_tokens(&lightTokens)
{
    m_palette_dark = QPalette().color(QPalette::Window).lightnessF() < 0.5;
}

void Theme::setChoice(ThemeChoice choice)
{
    m_choice = choice;
    resolve();
}

void Theme::setDarkSource(DarkSource source)
{
    m_source = std::move(source);
    resolve();
}

void Theme::followDesktop()
{
    if (!sessionBusExists())
        return;
    QDBusConnection bus = QDBusConnection::sessionBus();
    if (!bus.isConnected())
        return;
    auto* listener = new PortalListener(this);
    bus.connect(portalService, portalPath, portalInterface, "SettingChanged", listener,
                SLOT(settingChanged(QString, QString, QDBusVariant)));
    QDBusMessage call = QDBusMessage::createMethodCall(portalService, portalPath, portalInterface, "Read");
    call << QString::fromLatin1(appearance) << QString::fromLatin1(colourScheme);
    auto* watcher = new QDBusPendingCallWatcher(bus.asyncCall(call, 1000), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [this](QDBusPendingCallWatcher* finished) {
        const QDBusPendingReply<QDBusVariant> reply = *finished;
        if (reply.isValid())
            portalSays(darkFromPortal(reply.value().variant()));
        finished->deleteLater();
    });
}

void Theme::portalSays(std::optional<bool> dark)
{
    m_portal_dark = dark;
    resolve();
}

void Theme::resolve()
{
    bool dark = m_choice == ThemeChoice::dark;
    if (m_choice == ThemeChoice::system) {
        std::optional<bool> wish = m_source ? m_source() : m_portal_dark;
        dark = wish.value_or(m_palette_dark);
    }
    m_tokens = dark ? &darkTokens : &lightTokens;
    applyToApplication();
    emit changed();
}

void Theme::applyToApplication()
{
    if (qApp == nullptr)
        return;
    const Tokens& t = *m_tokens;
    QPalette palette;
    palette.setColor(QPalette::Window, t.panel);
    palette.setColor(QPalette::WindowText, t.ink);
    palette.setColor(QPalette::Base, t.card);
    palette.setColor(QPalette::AlternateBase, t.panel);
    palette.setColor(QPalette::Text, t.ink);
    palette.setColor(QPalette::PlaceholderText, t.ink3);
    palette.setColor(QPalette::Button, t.card);
    palette.setColor(QPalette::ButtonText, t.ink);
    palette.setColor(QPalette::BrightText, t.stop);
    palette.setColor(QPalette::Link, t.live);
    palette.setColor(QPalette::LinkVisited, t.live);
    palette.setColor(QPalette::Highlight, t.live_soft);
    palette.setColor(QPalette::HighlightedText, t.ink);
    palette.setColor(QPalette::ToolTipBase, t.card);
    palette.setColor(QPalette::ToolTipText, t.ink);
    palette.setColor(QPalette::Mid, t.edge);
    palette.setColor(QPalette::Dark, t.edge);
    palette.setColor(QPalette::Midlight, t.rule);
    palette.setColor(QPalette::Light, t.card);
    palette.setColor(QPalette::Shadow, t.edge);
    for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, t.ink3);
    QApplication::setPalette(palette);
    QApplication::setFont(windowFont());

    const QString sheet = QStringLiteral(R"(
QToolTip { background: %card; color: %ink; border: 1px solid %edge; padding: 4px 6px; }
QMenu { background: %card; color: %ink; border: 1px solid %edge; border-radius: 6px; padding: 4px; }
QMenu::item { padding: 5px 22px 5px 12px; border-radius: 4px; }
QMenu::item:selected { background: %live_soft; color: %ink; }
QMenu::item:disabled { color: %ink3; }
QMenu::separator { height: 1px; background: %rule; margin: 4px 8px; }
QMenu::indicator { width: 12px; height: 12px; left: 4px; }
QLineEdit, QPlainTextEdit, QTextEdit { background: %card; color: %ink; border: 1px solid %edge; border-radius: 6px; padding: 2px 8px;
  selection-background-color: %live_soft; selection-color: %ink; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus { border: 2px solid %live; padding: 1px 7px; }
QLineEdit[invalid="true"] { border: 2px solid %stop; padding: 1px 7px; }
QLineEdit:disabled { color: %ink3; background: %panel; }
QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar::handle:vertical { background: %edge; border-radius: 3px; min-height: 24px; margin: 2px; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle:horizontal { background: %edge; border-radius: 3px; min-width: 24px; margin: 2px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QHeaderView::section { background: %panel; color: %ink2; border: none; border-bottom: 1px solid %rule; padding: 4px 6px; }
QTableView { background: %card; color: %ink; gridline-color: %rule; border: 1px solid %edge; border-radius: 6px;
  selection-background-color: %live_soft; selection-color: %ink; }
)");
    QString text = sheet;
    const std::pair<const char*, QColor> names[] = {
        {"%live_soft", t.live_soft}, {"%live", t.live}, {"%ink3", t.ink3}, {"%ink", t.ink},  {"%card", t.card},
        {"%panel", t.panel},         {"%edge", t.edge}, {"%rule", t.rule}, {"%stop", t.stop}};
    text.replace(QStringLiteral("%ink2"), t.ink2.name());
    for (const auto& [name, colour] : names)
        text.replace(QLatin1String(name), colour.name());
    qApp->setStyleSheet(text);
}

QColor Theme::colour(drawing::Ink ink) const
{
    return colourOf(*m_tokens, ink);
}

const Tokens& tokensOf(bool dark)
{
    return dark ? darkTokens : lightTokens;
}

QColor colourOf(const Tokens& t, drawing::Ink ink)
{
    using drawing::Ink;
    switch (ink) {
    case Ink::ink:
        return t.ink;
    case Ink::ink2:
        return t.ink2;
    case Ink::ink3:
        return t.ink3;
    case Ink::live:
        return t.live;
    case Ink::live_soft:
        return t.live_soft;
    case Ink::hatch:
        return t.hatch;
    case Ink::edge:
        return t.edge;
    case Ink::rule:
        return t.rule;
    case Ink::grid:
        return t.grid;
    case Ink::paper:
        return t.sheet;
    case Ink::panel:
        return t.panel;
    case Ink::card:
        return t.card;
    case Ink::shaft:
        return t.shaft;
    case Ink::stop:
        return t.stop;
    case Ink::stop_soft:
        return t.stop_soft;
    case Ink::caution:
        return t.caution;
    case Ink::caution_soft:
        return t.caution_soft;
    case Ink::met:
        return t.met;
    case Ink::met_soft:
        return t.met_soft;
    }
    return t.ink;
}

QFont windowFont(int pixels, int weight)
{
    static const QString family = familyOr(QStringLiteral("Inter"), QApplication::font().family());
    QFont font(family);
    font.setPixelSize(pixels);
    font.setWeight(static_cast<QFont::Weight>(weight));
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

QFont drawingFont(double capital_px)
{
    static const QString family =
        familyOr(QStringLiteral("osifont"), familyOr(QStringLiteral("Routed Gothic"), QStringLiteral("DejaVu Sans")));
    static const double capital_per_em = [] {
        QFont probe(family);
        probe.setPixelSize(1000);
        const double capital = QFontMetricsF(probe).capHeight();
        return capital > 100.0 ? capital / 1000.0 : 0.74;
    }();
    QFont font;
    font.setFamilies({family, QStringLiteral("Routed Gothic"), QStringLiteral("DejaVu Sans")});
    font.setPixelSize(std::max(6, qRound(capital_px / capital_per_em)));
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

} // namespace shaftwright::ui

#include "theme.moc"
