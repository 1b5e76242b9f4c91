type Row = Record<string, unknown>;
type Roll = (below: number) => number;

/** Values of no column, and of some. */
const ODD: readonly unknown[] = [
  null,
  '',
  'x',
  -1,
  0,
  1,
  2.5,
  9e15,
  true,
  [],
  {},
  { base64: 'AA==' },
  '2026-02-30',
  '2026-11-25',
  '9798969999008',
  'selling',
  '\u0000',
  '__proto__',
  'x'.repeat(5_000),
];

/** Changes one thing among the rows of a table. */
function changeTable(rows: Row[], others: readonly Row[], roll: Roll): void {
  const at = roll(rows.length);
  const row = rows[at];
  if (!row) return;
  const columns = Object.keys(row);
  const column = columns[roll(columns.length)] ?? '';
  const way = roll(7);
  if (way === 0) rows.splice(at, 1);
  else if (way === 1) rows.push(structuredClone(row));
  else if (way === 2) delete row[column];
  else if (way === 3) row[`${column}s`] = row[column];
  else if (way === 4) row[column] = rows[roll(rows.length)]?.[column];
  else if (way === 5) row[column] = Object.values(others[roll(others.length)] ?? {})[roll(8)] ?? null;
  else row[column] = ODD[roll(ODD.length)];
}

/**
 * A whole catalogue with one to three things changed behind its syntax: rows lost or doubled, columns lost or renamed,
 * values of other rows, other tables or no table.
 */
export function rewritten(bytes: Uint8Array, roll: Roll): Uint8Array {
  const whole = JSON.parse(Buffer.from(bytes).toString('utf8')) as { tables: Record<string, Row[]> };
  const filled = Object.values(whole.tables).filter((rows) => rows.length > 0);
  const anyOf = () => filled[roll(filled.length)] ?? [];
  for (let changes = 1 + roll(3); changes > 0; changes -= 1) changeTable(anyOf(), anyOf(), roll);
  return Buffer.from(JSON.stringify(whole));
}
