#include "ui/panels/segment_panel.h"

#include "core/edit/edit.h"
#include "ui/document/actions.h"
#include "ui/document/subject.h"
#include "ui/document/texts.h"
#include "ui/widgets/number_text.h"
#include "ui/widgets/segmented.h"

#include <QVBoxLayout>

namespace shaftwright::ui
{

namespace
{

QString featureName(FeatureKind kind)
{
    switch (kind) {
    case FeatureKind::fillet:
        return QObject::tr("Fillet");
    case FeatureKind::chamfer:
        return QObject::tr("Chamfer");
    case FeatureKind::undercut:
        return QObject::tr("Undercut");
    case FeatureKind::groove:
        return QObject::tr("Groove");
    case FeatureKind::keyway:
        return QObject::tr("Keyway");
    case FeatureKind::press_seat:
        return QObject::tr("Press-fitted seat");
    case FeatureKind::thread:
        return QObject::tr("Thread");
    case FeatureKind::centre_hole:
        return QObject::tr("Centre hole");
    }
    return {};
}

} // namespace

SegmentPanel::SegmentPanel(Document& document, SegmentId id) : m_document(document), m_id(std::move(id))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(20, 16, 18, 16);
    column->setSpacing(8);
    m_title = new PanelLabel(PanelLabel::Look::title, {}, this);
    column->addWidget(m_title);
    m_form = new Form(m_document, this);
    column->addWidget(m_form);
    const std::string base = "shaft.segments." + m_id.value + ".";
    const SegmentId segment = m_id;
    using K = QuantityKind;
    m_form->quantity({tr("Length"),
                      K::length_mm,
                      base + "length_mm",
                      [segment](const Arrangement& a) {
                          const Segment* s = findSegment(a, segment);
                          return s ? std::optional(s->length_mm) : std::nullopt;
                      },
                      [segment](const Arrangement& a, std::optional<double> v) {
                          return resizeSegment(a, segment, v.value_or(0.0), Rest::moves_along);
                      },
                      false,
                      {},
                      tr("What stands to the right moves along")});
    m_form->quantity({tr("Diameter"),
                      K::length_mm,
                      base + "outer_mm",
                      [segment](const Arrangement& a) {
                          const Segment* s = findSegment(a, segment);
                          return s ? std::optional(s->outer_mm) : std::nullopt;
                      },
                      [segment](const Arrangement& a, std::optional<double> v) {
                          const Segment* s = findSegment(a, segment);
                          return setDiameter(a, segment, v.value_or(0.0), s ? s->outer_end_mm : std::nullopt);
                      },
                      false,
                      {},
                      tr("At the left end")});
    m_form->quantity({tr("Diameter at right end"), K::length_mm, base + "outer_end_mm",
                      [segment](const Arrangement& a) {
                          const Segment* s = findSegment(a, segment);
                          return s ? s->outer_end_mm : std::nullopt;
                      },
                      [segment](const Arrangement& a, std::optional<double> v) {
                          const Segment* s = findSegment(a, segment);
                          return setDiameter(a, segment, s ? s->outer_mm : 0.0, v);
                      },
                      true, [](const Assessment&) { return tr("the same"); }, tr("Makes a cone")});
    m_form->quantity({tr("Bore"),
                      K::length_mm,
                      base + "bore_mm",
                      [segment](const Arrangement& a) {
                          const Segment* s = findSegment(a, segment);
                          return s ? s->bore_mm : std::nullopt;
                      },
                      [segment](const Arrangement& a, std::optional<double> v) {
                          const Segment* s = findSegment(a, segment);
                          return setBore(a, segment, v, v && s ? s->bore_end_mm : std::nullopt);
                      },
                      true,
                      [](const Assessment&) { return tr("solid"); },
                      {}});
    column->addWidget(new PanelRule(this));
    column->addWidget(new PanelLabel(PanelLabel::Look::head, tr("Cut into it"), this));
    m_features = new QWidget(this);
    auto* rows = new QVBoxLayout(m_features);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(6);
    column->addWidget(m_features);
    column->addStretch(1);
}

void SegmentPanel::buildFeatures(const Segment& segment)
{
    std::vector<FeatureId> ids;
    for (const Feature& feature : segment.features)
        ids.push_back(feature.id);
    if (ids == m_shown_features && (!ids.empty() || !m_features->findChildren<QWidget*>().isEmpty()))
        return;
    m_shown_features = ids;
    m_feature_forms.clear();
    qDeleteAll(m_features->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
    if (ids.empty()) {
        auto* none = new PanelLabel(PanelLabel::Look::second, tr("Nothing. Drag a groove or keyway from the shelf."), m_features);
        m_features->layout()->addWidget(none);
        none->show();
        return;
    }
    const SegmentId id = m_id;
    for (const Feature& feature : segment.features) {
        auto* head = new PanelLabel(PanelLabel::Look::text, featureName(feature.kind), m_features);
        m_features->layout()->addWidget(head);
        head->show();
        auto* form = new Form(m_document, m_features);
        const FeatureId feature_id = feature.id;
        const std::string base = "shaft.segments." + id.value + ".features." + feature_id.value + ".";
        const auto row = [&](const QString& label, const char* key, double Feature::*member, QuantityKind kind) {
            form->quantity({label,
                            kind,
                            base + key,
                            [id, feature_id, member](const Arrangement& a) -> std::optional<double> {
                                const Segment* s = findSegment(a, id);
                                if (s == nullptr)
                                    return std::nullopt;
                                for (const Feature& f : s->features) {
                                    if (f.id == feature_id)
                                        return f.*member;
                                }
                                return std::nullopt;
                            },
                            [id, feature_id, member](const Arrangement& a, std::optional<double> v) -> Result<Arrangement> {
                                // A feature is changed by taking it out and putting the changed one in its place.
                                const Segment* s = findSegment(a, id);
                                if (s == nullptr)
                                    return a;
                                for (Feature f : s->features) {
                                    if (f.id != feature_id)
                                        continue;
                                    f.*member = v.value_or(0.0);
                                    const Result<Arrangement> without = removeFeature(a, id, feature_id);
                                    return without.ok() ? addFeature(without.value(), id, f) : without;
                                }
                                return a;
                            },
                            false,
                            {},
                            {}});
        };
        const bool radius = feature.kind == FeatureKind::fillet;
        row(tr("From the left end"), "position_mm", &Feature::position_mm, QuantityKind::length_mm);
        row(radius ? tr("Radius") : tr("Length"), "length_mm", &Feature::length_mm, QuantityKind::length_mm);
        if (feature.kind == FeatureKind::groove || feature.kind == FeatureKind::keyway || feature.kind == FeatureKind::undercut)
            row(tr("Depth"), "depth_mm", &Feature::depth_mm, QuantityKind::length_mm);
        if (feature.kind == FeatureKind::keyway)
            row(tr("Width"), "width_mm", &Feature::width_mm, QuantityKind::length_mm);
        m_features->layout()->addWidget(form);
        form->show();
        m_feature_forms.push_back(form);
        auto* drop = new QuietButton(tr("Remove %1").arg(featureName(feature.kind).toLower()), m_features);
        connect(drop, &QuietButton::clicked, this, [this, id, feature_id, name = featureName(feature.kind)] {
            m_document.push(removeFeature(m_document.committed(), id, feature_id), tr("Remove %1").arg(name.toLower()));
        });
        static_cast<QVBoxLayout*>(m_features->layout())->addWidget(drop, 0, Qt::AlignLeft);
        drop->show();
    }
}

void SegmentPanel::refresh()
{
    const Segment* segment = findSegment(m_document.shown(), m_id);
    if (segment == nullptr)
        return;
    m_title->setText(subjectName(m_document.shown(), pathOf(m_id)));
    m_form->refresh();
    buildFeatures(*segment);
    for (Form* form : m_feature_forms)
        form->refresh();
}

} // namespace shaftwright::ui
