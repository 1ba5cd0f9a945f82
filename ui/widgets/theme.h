#pragma once
// Colours and fonts of the window. Every colour pair keeps 4.5:1 for text and 3:1 for graphics.

#include "core/drawing/display_list.h"

#include <QColor>
#include <QFont>
#include <QObject>

#include <functional>
#include <optional>

namespace shaftwright::ui
{

enum class ThemeChoice { system, light, dark };

/// The colour tokens of one theme.
struct Tokens {
    bool dark = false;
    QColor desk, sheet, panel, card;
    QColor ink, ink2, ink3;
    QColor edge, rule, grid, hatch, shaft;
    QColor live, live_soft;
    QColor stop, caution, met;
    QColor stop_soft, caution_soft, met_soft;
};

/// The theme in force. One per program, since a window has one look.
class Theme : public QObject
{
    Q_OBJECT
public:
    static Theme& instance();

    [[nodiscard]] const Tokens& tokens() const { return *m_tokens; }
    [[nodiscard]] ThemeChoice choice() const { return m_choice; }
    void setChoice(ThemeChoice choice);

    /// Where the desktop's wish comes from; tests put a fake here. Empty: nothing known, the palette decides.
    using DarkSource = std::function<std::optional<bool>()>;
    void setDarkSource(DarkSource source);
    /// Asks the desktop portal without waiting for it and follows its changes. No-op without a session bus.
    void followDesktop();

    [[nodiscard]] QColor colour(drawing::Ink ink) const;

signals:
    void changed();

private:
    Theme();
    friend class PortalListener;
    void portalSays(std::optional<bool> dark);
    void resolve();
    void applyToApplication();

    ThemeChoice m_choice = ThemeChoice::system;
    const Tokens* m_tokens = nullptr;
    DarkSource m_source;
    std::optional<bool> m_portal_dark;
    bool m_palette_dark = false;
};

/// Tokens of a theme, in force or not; and the colour that an ink has in it.
[[nodiscard]] const Tokens& tokensOf(bool dark);
[[nodiscard]] QColor colourOf(const Tokens& tokens, drawing::Ink ink);

/// Tokens in force.
[[nodiscard]] inline const Tokens& tokens()
{
    return Theme::instance().tokens();
}

/// Window text; `pixels` is the size of the em.
[[nodiscard]] QFont windowFont(int pixels = 12, int weight = QFont::Normal);
/// Lettering of the drawing (ISO 3098) for a height of capitals in pixels.
[[nodiscard]] QFont drawingFont(double capital_px);

} // namespace shaftwright::ui
