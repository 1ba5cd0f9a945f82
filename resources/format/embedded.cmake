list(APPEND files "format/v1/arrangement.schema.json")
