list(APPEND files
    "text/parts/de.reasons.json"
    "text/parts/en.reasons.json"
)
