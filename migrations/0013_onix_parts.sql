-- What an ONIX message told of a format that the catalogue has no field for. It is given back on export: `bound` parts in
-- place of our own part of the same name and key, the others always. The XML stands in reference names.
CREATE TABLE onix_part (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  place TEXT NOT NULL
    CHECK (place IN ('Product', 'DescriptiveDetail', 'CollateralDetail', 'PublishingDetail', 'RelatedMaterial')),
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  key TEXT NOT NULL DEFAULT '',
  bound INTEGER NOT NULL CHECK (bound IN (0, 1)),
  version TEXT NOT NULL CHECK (version IN ('2.1', '3.0', '3.1')),
  xml TEXT NOT NULL,
  UNIQUE (format_id, position)
) STRICT;
