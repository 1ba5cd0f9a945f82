#include "ui/widgets/number_text.h"

#include "core/units/number_text.h"

#include <QFontMetricsF>
#include <QGlyphRun>
#include <QHash>
#include <QRawFont>

#include <cmath>

namespace shaftwright::ui
{

namespace
{

struct DigitFont {
    QRawFont raw;
    double digit_advance = 0.0;
    quint32 digit_glyph[10] = {};
    double digit_own[10] = {};
};

const DigitFont& digitFont(const QFont& font)
{
    static QHash<QString, DigitFont> cache;
    const QString key = font.key();
    const auto found = cache.constFind(key);
    if (found != cache.constEnd())
        return *found;
    DigitFont made;
    made.raw = QRawFont::fromFont(font);
    const QVector<quint32> glyphs = made.raw.glyphIndexesForString(QStringLiteral("0123456789"));
    const QVector<QPointF> advances = made.raw.advancesForGlyphIndexes(glyphs);
    for (int i = 0; i < 10 && i < advances.size(); ++i) {
        made.digit_glyph[i] = glyphs[i];
        made.digit_own[i] = advances[i].x();
        made.digit_advance = std::max(made.digit_advance, advances[i].x());
    }
    return *cache.insert(key, made);
}

bool isThinSpace(QChar c)
{
    return c.unicode() == 0x2009 || c.unicode() == 0x202F || c.unicode() == 0x200A;
}

QString trimmedZeros(std::string text)
{
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0')
            text.pop_back();
        if (text.back() == '.')
            text.pop_back();
    }
    if (text == "-0")
        text = "0";
    return QString::fromStdString(typographic(text));
}

} // namespace

QString number(double value, int significant_digits)
{
    if (!std::isfinite(value))
        return QStringLiteral("–");
    if (value == 0.0)
        return QStringLiteral("0");
    return trimmedZeros(significant(value, significant_digits));
}

QString fixedNumber(double value, int decimals)
{
    if (!std::isfinite(value))
        return QStringLiteral("–");
    return trimmedZeros(fixedDecimal(value, decimals));
}

QString plainNumber(double value)
{
    if (!std::isfinite(value))
        return {};
    return QString::fromStdString(typographic(shortestDecimal(value)));
}

QString forceText(double force_N)
{
    if (std::abs(force_N) >= 999.5)
        return QString::fromStdString(typographic(significant(force_N / 1000.0, 3))) + QStringLiteral(" kN");
    return fixedNumber(force_N, 0) + QStringLiteral(" N");
}

QString lifeText(double life_h)
{
    if (!std::isfinite(life_h))
        return QStringLiteral("unlimited");
    if (life_h >= 999500.0)
        return number(life_h / 1e6) + QStringLiteral(" million h");
    return number(life_h) + QStringLiteral(" h");
}

QString lifeAgainst(double life_h, double required_h)
{
    // A life that misses its requirement by a little must not read as if it met it.
    for (int digits = 3; digits <= 6; ++digits) {
        const QString text = number(life_h, digits);
        if (life_h >= required_h || text != number(required_h, digits))
            return life_h >= 999500.0 ? lifeText(life_h) : text + QStringLiteral(" h");
    }
    return number(life_h, 7) + QStringLiteral(" h");
}

QString lengthText(double length_mm)
{
    return fixedNumber(length_mm, 3);
}

QString speedText(double speed_rpm)
{
    return fixedNumber(speed_rpm, std::abs(speed_rpm) < 100.0 ? 1 : 0) + QStringLiteral("/min");
}

double tabularWidth(const QFont& font, const QString& text)
{
    const DigitFont& digits = digitFont(font);
    double width = 0.0;
    QString rest;
    for (const QChar c : text) {
        if (c.unicode() >= '0' && c.unicode() <= '9')
            width += digits.digit_advance;
        else if (isThinSpace(c))
            width += digits.digit_advance * 0.32;
        else
            rest += c;
    }
    if (!rest.isEmpty()) {
        const QVector<quint32> glyphs = digits.raw.glyphIndexesForString(rest);
        for (const QPointF& advance : digits.raw.advancesForGlyphIndexes(glyphs))
            width += advance.x();
    }
    return width;
}

void drawTabular(QPainter& painter, const QFont& font, QPointF anchor, const QString& text, Qt::Alignment align)
{
    const DigitFont& digits = digitFont(font);
    if (align & Qt::AlignRight)
        anchor.rx() -= tabularWidth(font, text);
    else if (align & Qt::AlignHCenter)
        anchor.rx() -= tabularWidth(font, text) / 2.0;

    QVector<quint32> glyphs;
    QVector<QPointF> positions;
    glyphs.reserve(text.size());
    positions.reserve(text.size());
    double x = 0.0;
    for (const QChar c : text) {
        if (c.unicode() >= '0' && c.unicode() <= '9') {
            const int digit = c.unicode() - '0';
            glyphs.append(digits.digit_glyph[digit]);
            positions.append(QPointF(x + (digits.digit_advance - digits.digit_own[digit]) / 2.0, 0.0));
            x += digits.digit_advance;
        } else if (isThinSpace(c)) {
            x += digits.digit_advance * 0.32;
        } else {
            const QVector<quint32> one = digits.raw.glyphIndexesForString(QString(c));
            if (one.isEmpty())
                continue;
            if (one.front() == 0) {
                // The font lacks the sign: let the text engine find another font for it.
                painter.setFont(font);
                painter.drawText(anchor + QPointF(x, 0.0), QString(c));
            } else {
                glyphs.append(one.front());
                positions.append(QPointF(x, 0.0));
            }
            x += digits.raw.advancesForGlyphIndexes(one).front().x();
        }
    }
    QGlyphRun run;
    run.setRawFont(digits.raw);
    run.setGlyphIndexes(glyphs);
    run.setPositions(positions);
    painter.drawGlyphRun(anchor, run);
}

QString elided(const QFont& font, const QString& text, double width)
{
    return QFontMetricsF(font).elidedText(text, Qt::ElideMiddle, width);
}

} // namespace shaftwright::ui
