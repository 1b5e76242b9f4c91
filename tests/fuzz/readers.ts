import { unzipSync, zipSync } from 'fflate';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, stage } from '../support/staged.ts';
import { dice, mutated } from './mutate.ts';

/** Milliseconds that one damaged file may take; more is a hang. */
const HANG_MS = 5_000;

export interface FuzzResult {
  inputs: number;
  taken: number;
  refused: number;
  slowestMs: number;
}

/** A workbook changed in one of its unpacked parts and packed again, so that the change lies behind the zip. */
function repacked(bytes: Uint8Array, roll: (below: number) => number): Uint8Array {
  const parts = unzipSync(bytes);
  const names = Object.keys(parts);
  const name = names[roll(names.length)] ?? '';
  return zipSync({ ...parts, [name]: mutated(parts[name] ?? new Uint8Array(1), roll) }, { level: 0 });
}

type Try = (catalogue: TestCatalogue, bytes: Uint8Array) => { ok: boolean; code?: string; message?: string };

const answered = (answer: ReturnType<TestCatalogue['app']['call']>) =>
  answer.ok ? { ok: true } : { ok: false, ...answer.error };

/** Looks at a table and tries to take it over. */
const tryTable: Try = (catalogue, bytes) => {
  const file = stage(catalogue, bytes);
  const looked = catalogue.app.call('sheets.look', { file });
  if (!looked.ok) return answered(looked);
  const { columns } = looked.value as {
    columns: { index: number; field: string | null; detail: string; reading: string | null }[];
  };
  const chosen = columns.map(({ index, field, detail, reading }) => ({ index, field, detail, reading }));
  return answered(
    catalogue.app.call('sheets.import', { file, columns: chosen, dryRun: true, goodRowsOnly: true }),
  );
};

const tryWhole: Try = (catalogue, bytes) =>
  answered(catalogue.app.call('catalogue.import', { file: stage(catalogue, bytes), dryRun: true }));

export const FUZZED = { csv: tryTable, xlsx: tryTable, json: tryWhole } as const;
export type Fuzzed = keyof typeof FUZZED;

/**
 * Gives a reader so many damaged copies of real files: each is taken or refused in a sentence, none breaks it, hangs or
 * changes the catalogue. Throws with the seed of the first that does.
 */
export function fuzz(kind: Fuzzed, inputs: number, seed = 20_261_125): FuzzResult {
  const from = openTestCatalogue('2026-11-25');
  from.call('catalogue.demo', {});
  const real = exported(from, kind);
  from.close();
  const catalogue = openTestCatalogue('2026-11-25');
  const result = { inputs, taken: 0, refused: 0, slowestMs: 0 };
  for (let turn = 0; turn < inputs; turn += 1) {
    const roll = dice(seed + turn * 7_919);
    const bytes = kind === 'xlsx' && roll(2) === 0 ? repacked(real, roll) : mutated(real, roll);
    const start = performance.now();
    const { ok, code, message } = FUZZED[kind](catalogue, bytes);
    const taken = performance.now() - start;
    result.slowestMs = Math.max(result.slowestMs, taken);
    if (ok) result.taken += 1;
    else result.refused += 1;
    if (code === 'INTERNAL' || taken > HANG_MS)
      throw new Error(`${kind}, seed ${seed}, input ${turn}: ${message ?? `took ${Math.round(taken)} ms`}`);
  }
  const { journalEntries, empty } = catalogue.call('catalogue.info', {});
  if (journalEntries > 0 || !empty) throw new Error(`${kind}: a damaged file left something behind.`);
  if (!catalogue.call('catalogue.check', {}).ok)
    throw new Error(`${kind}: the catalogue is no longer sound.`);
  catalogue.close();
  return result;
}
