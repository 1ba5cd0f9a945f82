list(APPEND files
    "selection/bush_limits.csv"
    "selection/families.csv"
    "selection/rules.csv"
    "selection/series.csv"
    "selection/weights.csv"
)
