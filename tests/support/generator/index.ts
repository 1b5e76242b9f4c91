import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openCatalogueFile } from '../../../src/store/catalogue-file.ts';
import { markOf, noteMark } from '../../../src/store/left-as.ts';
import { MIGRATIONS, readMigrations } from '../../../src/store/migrate.ts';
import { type ComingEdition, live } from './editions.ts';
import type { LivingWork } from './formats.ts';
import { layQuickly } from './lay.ts';
import { Ledger } from './ledger.ts';
import { Press } from './press.ts';
import { between, type Dice, dayNumber, diceOf, isoDay, oneOf, personOf, titleOf, workday } from './words.ts';

// Catalogues of any size to test and measure with: works with chains of editions, formats, three listings each in all
// standings, prices, tasks, plans, proof rounds, submissions, and the journal of the fifteen years they came about in.
// They pass the program's own check. The same size and seed gives the same catalogue.

const FIRST_DAY = '2012-01-02';
/** The day that a generated press has come to. */
export const LAST_DAY = '2026-11-25';

interface GrownTerms {
  formats: number;
  seed?: number;
  /** The day it has come to, where that is earlier than LAST_DAY. */
  until?: string;
}

/** Days from the last one on which the first works come out, so that every standing occurs however few works there are. */
const FIRST_WORKS: readonly (readonly number[])[] = [[130], [44], [21], [8], [-1500, -4]];

/** The days on which the editions of the nth work come out. */
function daysOf(dice: Dice, nth: number): number[] {
  const last = dayNumber(LAST_DAY);
  const fixed = FIRST_WORKS[nth]?.map((day) => workday(last + day));
  if (fixed) return fixed;
  const days = [workday(between(dice, dayNumber(FIRST_DAY) + 160, last + 140))];
  const length = oneOf(dice, [1, 1, 1, 1, 1, 2, 2, 2, 3, 4]);
  while (days.length < length) days.push(workday((days.at(-1) ?? last) + between(dice, 700, 1800)));
  return days.filter((day, index) => index === 0 || day < last + 140);
}

/** The chain of editions of the nth work, the earliest first; at most `room` formats are in it. */
function chainOf(dice: Dice, nth: number, forms: readonly string[], room: number): ComingEdition {
  const [first = 0, ...later] = daysOf(dice, nth).filter(
    (_, index) => index === 0 || (index + 1) * forms.length <= room,
  );
  const ends = dice() < 0.1 ? (later.at(-1) ?? first) + between(dice, 1500, 3500) : null;
  const edition = (place: number, day: number, next: ComingEdition | null): ComingEdition => ({
    place,
    day,
    forms: forms.slice(0, room),
    ends,
    next,
  });
  const following = later.reduceRight<ComingEdition | null>(
    (next, day, index) => edition(index + 2, day, next),
    null,
  );
  return edition(1, first, following);
}

const formatsIn = (edition: ComingEdition | null): number =>
  edition ? edition.forms.length + formatsIn(edition.next) : 0;

/** Something to do beside every plan, and a number kept for a later book, in the last weeks. */
function addLoose(press: Press, work: LivingWork, nth: number): void {
  const day = between(press.dice, dayNumber(LAST_DAY) - 60, dayNumber(LAST_DAY));
  press.on(day, () => {
    const id = work.id === 0 ? null : work.id;
    if (nth % 20 === 0) {
      press.command('tasks.create');
      const title = `Ask for a new cover drawing: ${work.title}`;
      press.add('task', { kind: 'own', title, due_on: isoDay(workday(day + 90)), work_id: id }, id);
    }
    if (nth % 25 === 0) {
      press.command('numbers.reserve');
      press.takeNumber({ reserved_for: `What follows ${work.title}`, reserved_on: press.today }, null);
    }
  });
}

/** Puts the lives of all works on their days. */
function found(press: Press, formats: number): void {
  const { dice } = press;
  const people = Math.max(12, Math.round(formats / 14));
  for (let done = 0, nth = 0; done < formats; nth += 1) {
    const more = [dice() < 0.8 && 'ED', dice() < 0.35 && 'BB', dice() < 0.2 && 'AJ'];
    const forms = ['BC', ...more.filter((form) => form !== false)];
    const author = { role: 'A01', name: personOf(between(dice, 0, people - 1)) };
    const second = {
      role: oneOf(dice, ['A12', 'B01', 'A23']),
      name: personOf(people + between(dice, 0, people >> 2)),
    };
    const work: LivingWork = {
      id: 0,
      title: titleOf(nth),
      people: dice() < 0.4 ? [author, second] : [author],
      forms,
    };
    const chain = chainOf(dice, nth, forms, formats - done);
    done += formatsIn(chain);
    live(press, work, chain);
    addLoose(press, work, nth);
  }
}

/** Fills a new file at `file`. */
export function grow(file: string, { formats, seed = 1, until = LAST_DAY }: GrownTerms): void {
  openCatalogueFile(file, { at: `${FIRST_DAY}T09:00:00.000Z` }).close();
  const raw = new Database(file);
  layQuickly(raw, () => {
    const press = new Press(new Ledger(raw), diceOf(seed), formats, FIRST_DAY);
    found(press, formats);
    press.pass(until);
    press.ledger.finish();
  });
  raw.close();
  noteAsLeft(file);
}

/** Notes beside a file that it stands as the program would have left it. */
function noteAsLeft(file: string): void {
  const side = new Database(`${file}-hold`);
  noteMark(side, markOf(file));
  side.close();
}

/** Stands for everything that a generated file follows from. */
function madeBy(): string {
  const sources = readdirSync(import.meta.dirname).sort();
  const store = new URL('../../../src/store/', import.meta.url);
  const hash = createHash('sha256');
  for (const { sha256 } of readMigrations(MIGRATIONS)) hash.update(sha256);
  for (const name of sources) hash.update(readFileSync(join(import.meta.dirname, name)));
  for (const name of ['journal-triggers.ts', 'journal.ts']) hash.update(readFileSync(new URL(name, store)));
  return hash.digest('hex').slice(0, 12);
}

const A_DAY = 86_400_000;

/** Lets kept catalogues go that nobody opened for a day. */
function forgetOld(folder: string): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (Date.now() - statSync(path).mtimeMs > A_DAY) rmSync(path, { recursive: true, force: true });
  }
}

/**
 * A generated catalogue, made once and kept in the system's temporary folder: read it, never write to it. Answers its
 * path; the file beside it notes how it was left, so that opening it does not examine it whole.
 */
export function grown(terms: GrownTerms): string {
  const { formats, seed = 1, until = LAST_DAY } = terms;
  const kept = join(tmpdir(), 'edition-ledger-grown');
  const place = join(kept, `${formats}-${seed}-${until}-${madeBy()}`);
  const file = join(place, 'catalogue.ledger');
  if (existsSync(file)) return file;
  mkdirSync(kept, { recursive: true });
  forgetOld(kept);
  const making = `${place}-${process.pid}`;
  mkdirSync(making);
  grow(join(making, 'catalogue.ledger'), terms);
  // Somebody else may have been quicker; either is the same.
  if (existsSync(place)) rmSync(making, { recursive: true });
  else renameSync(making, place);
  noteAsLeft(file);
  return file;
}

/** A copy of a generated catalogue in a folder of the caller's, to write to. */
export function grownCopy(terms: GrownTerms, folder: string): string {
  const from = grown(terms);
  const to = join(folder, `grown-${terms.formats}.ledger`);
  copyFileSync(from, to);
  noteAsLeft(to);
  return to;
}
