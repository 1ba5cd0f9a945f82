#include "ui/window/exports.h"

#include "core/catalogue/catalogue.h"
#include "core/document/document.h"
#include "core/drawing/sheet.h"
#include "core/report/json_report.h"
#include "core/report/report.h"
#include "ui/document/texts.h"
#include "ui/sheet/render_page.h"

#include <QDir>
#include <QFileInfo>

namespace shaftwright::ui
{

namespace
{

QString put(const QString& file, const std::string& bytes)
{
    if (const auto error = saveFile(file.toStdString(), bytes))
        return whyNotWritten(file, readErrorText(*error));
    return {};
}

QString unknownForm(const QString& file, const QString& forms)
{
    return QObject::tr("“%1” ends in none of %2, so its form is not known.").arg(QFileInfo(file).fileName(), forms);
}

} // namespace

QString whyNotWritten(const QString& file, const QString& else_words)
{
    const QFileInfo info(file);
    const QFileInfo folder(info.absolutePath());
    const QString name = QDir::toNativeSeparators(folder.absoluteFilePath());
    if (!folder.exists())
        return QObject::tr("The folder %1 does not exist.").arg(name);
    if (!folder.isDir())
        return QObject::tr("%1 is no folder.").arg(name);
    if (info.isDir())
        return QObject::tr("%1 is a folder; a file needs another name.").arg(QDir::toNativeSeparators(info.absoluteFilePath()));
    // A system folder can refuse although its permissions allow it; then nothing of that name stands there afterwards.
    if (!folder.isWritable() || !info.exists())
        return QObject::tr("The folder %1 takes no new file: it is not writable.").arg(name);
    return else_words;
}

QString writeReport(Document& document, const QString& file)
{
    const QString suffix = QFileInfo(file).suffix().toLower();
    const Arrangement& value = document.committed();
    const Assessment& assessment = document.assessment();
    Catalogues catalogues;
    catalogues.list.push_back(&genericCatalogue());
    ReportOptions options;
    options.program_version = SHAFTWRIGHT_VERSION;
    if (suffix == QLatin1String("html") || suffix == QLatin1String("htm"))
        return put(file, htmlReport(value, assessment, catalogues, options));
    if (suffix == QLatin1String("txt"))
        return put(file, textReport(value, assessment, catalogues, options));
    if (suffix == QLatin1String("json"))
        return put(file, jsonReport(value, assessment, catalogues, SHAFTWRIGHT_VERSION));
    return unknownForm(file, QObject::tr(".html, .txt and .json"));
}

QString writeDrawing(Document& document, const QString& file)
{
    const QString suffix = QFileInfo(file).suffix().toLower();
    const bool known = suffix == QLatin1String("pdf") || suffix == QLatin1String("svg") || suffix == QLatin1String("png");
    if (!known)
        return unknownForm(file, QObject::tr(".pdf, .svg and .png"));
    const Arrangement& value = document.committed();
    const drawing::Page page = drawing::pageOf(value, document.assessment());
    const std::string title = value.title.title.empty() ? "Shaft arrangement" : value.title.title;
    if (suffix == QLatin1String("svg")) {
        const drawing::SvgMeta meta{title, "Shaft and bearing arrangement, lengths in mm. A calculation does not replace the "
                                           "maker's data, local codes or licensed practice."};
        return put(file, drawing::svg(page.list, page.width_mm, page.height_mm, meta));
    }
    PageImage request;
    request.format = suffix.toStdString();
    request.title = title;
    int argc = 0;
    std::string error;
    const auto bytes = renderPage(argc, nullptr, page, request, error);
    return bytes ? put(file, *bytes) : QString::fromStdString(error);
}

} // namespace shaftwright::ui
