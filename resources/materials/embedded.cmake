list(APPEND files "materials/materials.csv")
