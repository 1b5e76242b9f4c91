import type { AudioFacts, CheckLine } from '../../contract/proof-checks/facts.ts';
import { shownIsbn } from '../isbn/index.ts';
import { sameTitle } from '../same-title.ts';
import { ownerOf } from './epub-numbers.ts';
import { textLineOf } from './line.ts';
import type { ProofRecord } from './record.ts';

/** '9 h 41 min' */
function shownMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** The recorded running time is in whole minutes and is often rounded; how far off is a figure of the settings. */
function durationLine({ files }: AudioFacts, record: ProofRecord): CheckLine {
  const label = 'Running time';
  const untold = files.filter(({ seconds }) => seconds === null).length;
  const minutes = files.reduce((sum, { seconds }) => sum + (seconds ?? 0), 0) / 60;
  const expected = record.durationMinutes === null ? '' : shownMinutes(record.durationMinutes);
  const said = { expected, found: shownMinutes(minutes) };
  if (record.durationMinutes === null)
    return textLineOf('audio.duration', label, 'cannot tell', {
      ...said,
      advice: `Record the running time of this format; its files come to ${shownMinutes(minutes)}.`,
    });
  const tolerance = record.figures.durationToleranceMinutes;
  const off = minutes - record.durationMinutes;
  if (untold > 0 && off <= tolerance)
    return textLineOf('audio.duration', label, 'cannot tell', {
      ...said,
      advice: `The length of ${untold === 1 ? 'one file' : `${untold} files`} could not be read; play them.`,
    });
  if (Math.abs(off) <= tolerance) return textLineOf('audio.duration', label, 'agreed', said);
  return textLineOf('audio.duration', label, 'differs', {
    ...said,
    advice: `The files run ${shownMinutes(Math.abs(off))} ${off < 0 ? 'shorter; a file may be missing' : 'longer'} than recorded. Correct the record or the files.`,
  });
}

/** The number by which files are put in order: the last or first one in their names, whichever counts up. */
function numbersOf(names: readonly string[]): number[] | null {
  const digits = names.map((name) =>
    [...(name.split('/').at(-1) ?? '').matchAll(/\d+/g)].map(([one]) => one),
  );
  for (const place of [0, -1, -2]) {
    const column = digits.map((list) => list.at(place));
    const short = column.every((one) => one !== undefined && one.length <= 4);
    const numbers = column.map(Number);
    if (short && new Set(numbers).size === numbers.length) return numbers;
  }
  return null;
}

function filesLine({ files }: AudioFacts): CheckLine {
  const label = 'Sound files in order';
  const names = files.map(({ name }) => name);
  const found = `${files.length} ${files.length === 1 ? 'file' : 'files'}: ${names.slice(0, 3).join(', ')}${files.length > 3 ? ` … ${names.at(-1)}` : ''}`;
  const empty = files.find(({ bytes, seconds }) => bytes === 0 || (seconds !== null && seconds < 1));
  if (empty !== undefined)
    return textLineOf('audio.files', label, 'differs', {
      found,
      advice: `“${empty.name}” is empty; export it again.`,
    });
  const numbers = files.length > 1 ? numbersOf(names) : null;
  const sorted = [...(numbers ?? [])].sort((a, b) => a - b);
  const gap = sorted.find((number, index) => index > 0 && number !== (sorted[index - 1] ?? 0) + 1);
  if (gap !== undefined)
    return textLineOf('audio.files', label, 'differs', {
      found,
      advice: `The files are numbered, and number ${gap - 1} is missing.`,
    });
  return textLineOf('audio.files', label, 'agreed', { found });
}

function titleLine({ titles }: AudioFacts, record: ProofRecord): CheckLine {
  const said = { expected: record.title, found: titles.slice(0, 5).join(', ') };
  const label = 'Title in the files’ own data';
  if (titles.length === 0)
    return textLineOf('audio.title', label, 'not found', {
      ...said,
      advice: 'The files name no title (the tag “album”); listeners’ players show file names instead.',
    });
  const wrong = titles.filter((title) => !sameTitle(title, record));
  if (wrong.length === 0) return textLineOf('audio.title', label, 'agreed', said);
  return textLineOf('audio.title', label, 'differs', {
    ...said,
    advice: `“${wrong[0]}” is not the recorded title; see that every file belongs to this book.`,
  });
}

function isbnLine({ isbns }: AudioFacts, record: ProofRecord): CheckLine {
  const label = 'ISBN in names and tags';
  const numbers = [...new Set(isbns.flatMap(({ isbn13 }) => isbn13 ?? []))];
  const found = numbers.map(shownIsbn).join(', ');
  const expected = record.isbn13 === null ? 'No number yet' : shownIsbn(record.isbn13);
  const line = (state: CheckLine['state'], advice = '', page: number | null = null) =>
    textLineOf('audio.isbn', label, state, { expected, found, advice, page });
  const foreign = numbers.find((isbn13) => isbn13 !== record.isbn13);
  if (foreign !== undefined) {
    const seen = isbns.find(({ isbn13 }) => isbn13 === foreign);
    return line(
      'differs',
      `${shownIsbn(foreign)} is ${ownerOf(foreign, record).words}; see that these are the right files.`,
      seen?.page ?? null,
    );
  }
  if (numbers.length > 0) return line('agreed');
  return line('cannot tell', 'Sound files need not name an ISBN, and these do not.');
}

/** An audiobook against the record, a line for each thing that was looked at. */
export function checkAudio(facts: AudioFacts, record: ProofRecord): CheckLine[] {
  return [filesLine(facts), durationLine(facts, record), titleLine(facts, record), isbnLine(facts, record)];
}
