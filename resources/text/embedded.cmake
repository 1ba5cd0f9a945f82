list(APPEND files
    "text/en.assumptions.json"
    "text/en.derivations.json"
    "text/en.findings.json"
    "text/en.reader.json"
    "text/en.report.json"
    "text/en.words.json"
    "text/parts/de.reasons.json"
    "text/parts/en.reasons.json"
)
