#pragma once
// What is known of one support, standing under its place on the shaft.

#include "core/analysis/assessment.h"
#include "core/model/arrangement.h"

#include <QPainter>
#include <QRectF>
#include <QString>

#include <optional>
#include <vector>

namespace shaftwright::ui
{

enum class CardForm { full, compact, pin };

struct SupportCardData {
    QString subject, letter, role, governs;
    QString designation, bearing_line;
    std::optional<double> life_h, required_h;
    std::optional<bool> met;
    QString radial, axial, tilt, s0;
    QString load_case, tilt_case, s0_case; ///< cases that these are of, where the head does not say so
    Severity worst = Severity::note;       ///< of the findings of this support
    int stops = 0, cautions = 0;
    bool old_results = false;
};

/// @param case_index shown case; -1: the governing one
[[nodiscard]] SupportCardData supportCardData(const Support& support, const Assessment& results, int case_index,
                                              bool old_results);

struct PlacedCard {
    int index = 0; ///< of the support
    QRectF rect;
    CardForm form = CardForm::full;
};

/// Cards under their places: full where the room between the supports allows it, else compact, else pins. The selected one
/// opens over its neighbours. `places_px` in the order of the supports.
[[nodiscard]] std::vector<PlacedCard> placeCards(const std::vector<double>& places_px, QRectF room, int selected);

void paintSupportCard(QPainter& painter, const SupportCardData& data, const QRectF& rect, CardForm form, bool selected,
                      bool hovered);

/// Linear bar from 0 to 2.3 times the requirement with an arrow head beyond.
void paintLifeBar(QPainter& painter, const QRectF& rect, double found, double required, bool met);

inline constexpr double fullCardHeight = 116.0;
inline constexpr double compactCardHeight = 72.0;

} // namespace shaftwright::ui
