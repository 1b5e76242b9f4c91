import Database from 'better-sqlite3';
import { unzipSync, zipSync } from 'fflate';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, imported, stage } from '../support/staged.ts';
import { rewritten } from './json-mutate.ts';
import { dice, mutated } from './mutate.ts';

/** Milliseconds of processor time that one damaged file may take; more is a hang. */
const HANG_MS = 5_000;
/** How often a damaged file is taken over for good, into a catalogue of its own that is checked whole. */
const FOR_GOOD_EVERY = 1_000;
/** A whole catalogue brings its rows as they are, so that what it leaves is looked at more often. */
const WHOLE_FOR_GOOD_EVERY = 4;
const TODAY = '2026-11-25';

export interface FuzzResult {
  inputs: number;
  taken: number;
  refused: number;
  /** Files tried for good that were refused whole for one row. */
  refusedWhole: number;
  slowestMs: number;
}

/** A workbook changed in one of its unpacked parts and packed again, so that the change lies behind the zip. */
function repacked(bytes: Uint8Array, roll: (below: number) => number): Uint8Array {
  const parts = unzipSync(bytes);
  const names = Object.keys(parts);
  const name = names[roll(names.length)] ?? '';
  return zipSync({ ...parts, [name]: mutated(parts[name] ?? new Uint8Array(1), roll) }, { level: 0 });
}

interface Tried {
  ok: boolean;
  /** Rows of a table that were refused while the rest would be taken. */
  rowsRefused?: number;
  code?: string;
  message?: string;
}
type Try = (catalogue: TestCatalogue, file: string, dryRun: boolean) => Tried;

const answered = (answer: ReturnType<TestCatalogue['app']['call']>): Tried =>
  answer.ok ? { ok: true } : { ok: false, ...answer.error };

/** Looks at a table and tries to take it over: the good rows on trial, all or nothing for good. */
const tryTable: Try = (catalogue, file, dryRun) => {
  const looked = catalogue.app.call('sheets.look', { file });
  if (!looked.ok) return answered(looked);
  const { columns: found } = looked.value as { columns: Record<string, unknown>[] };
  const columns = found.map(({ index, field, detail, reading }) => ({ index, field, detail, reading }));
  const answer = catalogue.app.call('sheets.import', { file, columns, dryRun, goodRowsOnly: dryRun });
  if (!answer.ok) return answered(answer);
  const { counts, refused } = answer.value as {
    counts: { refused: number };
    refused: { file: string } | null;
  };
  if (refused) catalogue.call('files.drop', { file: refused.file });
  return { ok: true, rowsRefused: counts.refused };
};

const tryWhole: Try = (catalogue, file, dryRun) =>
  answered(catalogue.app.call('catalogue.import', { file, dryRun }));

export const FUZZED = { csv: tryTable, xlsx: tryTable, json: tryWhole } as const;
export type Fuzzed = keyof typeof FUZZED;

/** Files as the program writes them: of a catalogue with one work, mostly, and of the demo press. */
function realFiles(kind: Fuzzed): Uint8Array[] {
  const small = openTestCatalogue(TODAY);
  imported(
    small,
    [
      'Title,Author,Edition number,Format,ISBN,Publication date,Price GBP,Pages,Description',
      'The Salt Almanac,Maren Oskarsdal,1,Paperback,979-8-969999-00-8,2024-05-01,12.99,240,"A year, by day"',
      'The Salt Almanac,Maren Oskarsdal,1,E-book (EPUB),979-8-969999-01-5,2024-05-01,6.99,,"A year, by day"',
    ].join('\n'),
  );
  const little = exported(small, kind);
  small.close();
  const demo = openTestCatalogue(TODAY);
  demo.call('catalogue.demo', {});
  const large = exported(demo, kind);
  demo.close();
  return [little, little, little, little, little, little, little, large];
}

/** One damaged file, told by its seed. */
function damaged(kind: Fuzzed, real: readonly Uint8Array[], seed: number): Uint8Array {
  const roll = dice(seed);
  const bytes = real[roll(real.length)] ?? new Uint8Array(1);
  if (kind === 'xlsx' && roll(2) === 0) return repacked(bytes, roll);
  if (kind === 'json' && roll(2) === 0) return rewritten(bytes, roll);
  return mutated(bytes, roll);
}

/** What the screens read first, of everything that a file brought. */
function unreadable(catalogue: TestCatalogue): string | null {
  const ask = (name: string, input: unknown) => catalogue.app.call(name, input);
  const asked: [name: string, input: unknown][] = [
    ...['works.list', 'blocks.list', 'channels.list', 'tasks.list', 'settings.get', 'journal.list'].map(
      (name): [string, unknown] => [name, {}],
    ),
    ['audit.run', {}],
    ['exports.make', { as: 'csv' }],
    ['exports.make', { as: 'onix' }],
  ];
  const list = ask('works.list', {});
  const works = list.ok ? (list.value as { works: { id: number }[] }).works : [];
  for (const { id } of works) asked.push(['works.get', { id }]);
  for (const [name, input] of asked) {
    const answer = ask(name, input);
    if (!answer.ok && answer.error.code === 'INTERNAL') return `${name} fails: ${answer.error.message}`;
  }
  return null;
}

/** Takes a damaged file over for good into a catalogue of its own, which is sound afterwards, or empty. */
function forGood(kind: Fuzzed, bytes: Uint8Array): string | null {
  const catalogue = openTestCatalogue(TODAY);
  try {
    const { ok } = FUZZED[kind](catalogue, stage(catalogue, bytes), false);
    const { journalEntries, empty } = catalogue.call('catalogue.info', {});
    if (!ok && (journalEntries > 0 || !empty)) return 'a refused file left something behind';
    if (!catalogue.call('catalogue.check', {}).ok) return 'the catalogue is no longer sound';
    return ok ? unreadable(catalogue) : null;
  } finally {
    catalogue.close();
  }
}

/**
 * Gives a reader so many damaged copies of real files: each is taken or refused in a sentence, none breaks it, hangs or
 * changes the catalogue. A table with refused rows is tried for good too, all or nothing; another connection sees
 * whether anything was written. Throws with the number of the first that does otherwise.
 */
export function fuzz(
  kind: Fuzzed,
  inputs: number,
  seed = 20_261_125,
  tell: (done: FuzzResult) => void = () => {},
): FuzzResult {
  const real = realFiles(kind);
  const catalogue = openTestCatalogue(TODAY);
  const witness = new Database(catalogue.file, { readonly: true });
  const written = () => witness.pragma('data_version', { simple: true });
  const before = written();
  const result = { inputs: 0, taken: 0, refused: 0, refusedWhole: 0, slowestMs: 0 };
  for (let turn = 0; turn < inputs; turn += 1) {
    const bytes = damaged(kind, real, seed + turn * 7_919);
    const fail = (what: string) => new Error(`${kind}, seed ${seed}, input ${turn}: ${what}`);
    const begun = process.cpuUsage();
    const file = stage(catalogue, bytes);
    const { ok, code, message, rowsRefused = 0 } = FUZZED[kind](catalogue, file, true);
    const whole = rowsRefused > 0 ? FUZZED[kind](catalogue, file, false) : null;
    const { user, system } = process.cpuUsage(begun);
    const taken = (user + system) / 1000;
    catalogue.call('files.drop', { file });
    result.slowestMs = Math.max(result.slowestMs, taken);
    result.inputs += 1;
    if (ok) result.taken += 1;
    else result.refused += 1;
    if (whole) result.refusedWhole += 1;
    if (code === 'INTERNAL' || whole?.code === 'INTERNAL') throw fail(message ?? whole?.message ?? '');
    if (whole?.ok) throw fail('rows were refused, and others taken');
    if (taken > HANG_MS) throw fail(`took ${Math.round(taken)} ms`);
    if (written() !== before) throw fail('something was written');
    const every = kind === 'json' && ok ? WHOLE_FOR_GOOD_EVERY : FOR_GOOD_EVERY;
    const wrong = turn % every === 0 ? forGood(kind, bytes) : null;
    if (wrong !== null) throw fail(wrong);
    if (result.inputs % 5_000 === 0) tell(result);
  }
  witness.close();
  const { ok: sound } = catalogue.call('catalogue.check', {});
  catalogue.close();
  if (!sound) throw new Error(`${kind}: the catalogue is no longer sound.`);
  return result;
}
