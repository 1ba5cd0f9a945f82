list(APPEND files
    "drawing/text-advances.csv"
)
