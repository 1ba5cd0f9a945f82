#include "ui/sheet/render_page.h"

#include "ui/sheet/painter.h"
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QBuffer>
#include <QDateTime>
#include <QImage>
#include <QImageWriter>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <cstring>

namespace shaftwright::ui
{

namespace
{

constexpr int pdf_dpi = 1200;
constexpr double mm_per_inch = 25.4;
constexpr double greatest_pixels = 4.0e8; ///< of an image: 1.6 GB

/// Fonts of a PDF are written in the order of a hash; the order must not change from run to run.
void startQt(int& argc, char** argv)
{
    if (QCoreApplication::instance() != nullptr)
        return;
    QHashSeed::setDeterministicGlobalSeed();
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    // What Qt itself has to say (missing plugins and the like) is of no use to the user.
    qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& message) {
        if (type == QtFatalMsg)
            fprintf(stderr, "%s\n", qPrintable(message));
    });
    // Fonts and images outlive every page, so the application is never taken down.
    [[maybe_unused]] static auto* application = new QApplication(argc, argv);
}

long long dateOfBuild()
{
    constexpr long long year_2000 = 946684800;
    const char* text = std::getenv("SOURCE_DATE_EPOCH");
    if (text == nullptr)
        return year_2000;
    long long seconds = 0;
    const char* end = text + std::strlen(text);
    const auto [stopped, trouble] = std::from_chars(text, end, seconds);
    constexpr long long year_9999 = 253370764800;
    return trouble == std::errc() && stopped == end && seconds >= 0 && seconds < year_9999 ? seconds : year_2000;
}

void paintPage(QPainter& painter, const drawing::Page& page, const Tokens& colours, double px_per_mm)
{
    const QRectF sheet(0.0, 0.0, page.width_mm * px_per_mm, page.height_mm * px_per_mm);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::TextAntialiasing);
    painter.fillRect(sheet, colours.sheet);
    MmMap map;
    map.px_per_mm = px_per_mm;
    map.origin = QPointF(0.0, sheet.height()); // the page counts from its lower left corner
    ListPainter lists(colours);
    lists.paint(painter, page.list, map, sheet);
}

std::optional<std::string> pdf(const drawing::Page& page, const PageImage& request, const Tokens& colours, std::string& error)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(
            QPageLayout(QPageSize(QSizeF(page.width_mm, page.height_mm), QPageSize::Millimeter, QString(), QPageSize::ExactMatch),
                        QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
        writer.setResolution(pdf_dpi);
        writer.setTitle(QString::fromStdString(request.title));
        writer.setCreator(QStringLiteral("Shaftwright"));
        QPainter painter;
        if (!painter.begin(&writer)) {
            error = "the PDF cannot be written";
            return std::nullopt;
        }
        paintPage(painter, page, colours, pdf_dpi / mm_per_inch);
        painter.end();
    }
    std::string text = bytes.toStdString();
    fixDates(text, dateOfBuild());
    return text;
}

std::optional<std::string> png(const drawing::Page& page, const PageImage& request, const Tokens& colours, std::string& error)
{
    const double width = std::round(page.width_mm * request.pixels_per_mm);
    const double height = std::round(page.height_mm * request.pixels_per_mm);
    if (width * height > greatest_pixels) {
        error = "the image would have " + std::to_string(static_cast<long long>(width)) + " x " +
                std::to_string(static_cast<long long>(height)) + " pixels; ask for fewer pixels per mm";
        return std::nullopt;
    }
    QImage image(static_cast<int>(width), static_cast<int>(height), QImage::Format_RGB32);
    if (image.isNull()) {
        error = "not enough memory for the image; ask for fewer pixels per mm";
        return std::nullopt;
    }
    const int dots_per_metre = static_cast<int>(std::lround(request.pixels_per_mm * 1000.0));
    image.setDotsPerMeterX(dots_per_metre);
    image.setDotsPerMeterY(dots_per_metre);
    {
        QPainter painter(&image);
        // Laid out finely and scaled down, since sizes of letters are whole pixels.
        constexpr double fine_px_per_mm = 40.0;
        painter.scale(request.pixels_per_mm / fine_px_per_mm, request.pixels_per_mm / fine_px_per_mm);
        paintPage(painter, page, colours, fine_px_per_mm);
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, "png");
    writer.setText(QStringLiteral("Title"), QString::fromStdString(request.title));
    if (!writer.write(image)) {
        error = "the PNG cannot be written: " + writer.errorString().toStdString();
        return std::nullopt;
    }
    return bytes.toStdString();
}

} // namespace

void fixDates(std::string& pdf, long long seconds_since_1970)
{
    const std::string date =
        QDateTime::fromSecsSinceEpoch(seconds_since_1970, Qt::UTC).toString(QStringLiteral("yyyyMMddHHmmss")).toStdString();
    // "(D:20260131120000+01'00')": the zone is set to UTC in the same length.
    for (const char* key : {"/CreationDate", "/ModDate"}) {
        for (std::size_t at = pdf.find(key); at != std::string::npos; at = pdf.find(key, at + 1)) {
            const std::size_t start = pdf.find("(D:", at);
            if (start == std::string::npos || start > at + 20)
                continue;
            const std::size_t end = pdf.find(')', start);
            if (end == std::string::npos || end < start + 3 + date.size() || end > start + 40)
                continue;
            std::string text = "(D:" + date;
            const std::string zone = pdf.substr(start + 3 + date.size(), end - start - 3 - date.size());
            for (const char c : zone)
                text += c >= '0' && c <= '9' ? '0' : (c == '-' ? '+' : c);
            pdf.replace(start, end - start, text);
        }
    }
}

std::optional<std::string> renderPage(int& argc, char** argv, const drawing::Page& page, const PageImage& request,
                                      std::string& error)
{
    if (request.format != "pdf" && request.format != "png") {
        error = "a page becomes pdf or png, not '" + request.format + "'";
        return std::nullopt;
    }
    if (!(page.width_mm > 0.0 && page.height_mm > 0.0 && page.width_mm < 1.0e4 && page.height_mm < 1.0e4)) {
        error = "the page has no extent";
        return std::nullopt;
    }
    if (!(request.pixels_per_mm >= 1.0 && request.pixels_per_mm <= 40.0)) {
        error = "pixels per mm lie between 1 and 40";
        return std::nullopt;
    }
    startQt(argc, argv);
    Tokens colours = tokensOf(request.dark);
    if (!request.dark)
        colours.sheet = Qt::white; // paper brings its own tone
    return request.format == "pdf" ? pdf(page, request, colours, error) : png(page, request, colours, error);
}

} // namespace shaftwright::ui
