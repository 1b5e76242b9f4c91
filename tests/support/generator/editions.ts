import {
  addFormat,
  bringOut,
  cancel,
  changePrice,
  hasEnded,
  type LivingFormat,
  type LivingWork,
  nameOf,
  step,
} from './formats.ts';
import type { Row } from './ledger.ts';
import type { Press } from './press.ts';
import { between, dayNumber, descriptionOf, isoDay, keywordsOf, oneOf, workday } from './words.ts';

/** An edition that is to be: where it stands in its chain, and the day it is brought on sale. */
export interface ComingEdition {
  place: number;
  day: number;
  forms: readonly string[];
  /** The day from which it leaves without being replaced, where it does. */
  ends: number | null;
  next: ComingEdition | null;
}

interface LivingEdition {
  row: Row;
  formats: LivingFormat[];
  coming: ComingEdition;
}

type Task = { row: Row; plan: LivingPlan };
type LivingPlan = { row: Row; open: number };

/** The plan of an edition with its tasks; it ends with the last of them. */
class Plan {
  readonly #press: Press;
  readonly #work: LivingWork;
  readonly #edition: LivingEdition;
  readonly #plan: LivingPlan;

  constructor(
    press: Press,
    work: LivingWork,
    edition: LivingEdition,
    kind: 'release' | 'retirement',
    day: string,
  ) {
    this.#press = press;
    this.#work = work;
    this.#edition = edition;
    press.command(`plans.${kind}`);
    const given = { edition_id: edition.row.id ?? null, kind, day, made_on: press.today };
    this.#plan = { row: press.add('plan', given, work.id), open: 0 };
  }

  task(kind: string, title: string, due: number, of: Row = {}): Task {
    const records = {
      plan_id: this.#plan.row.id ?? null,
      work_id: this.#work.id,
      edition_id: this.#edition.row.id ?? null,
    };
    const given = { ...records, ...of, kind, step: kind, title, due_on: isoDay(workday(due)) };
    this.#plan.open += 1;
    return { row: this.#press.add('task', given, this.#work.id), plan: this.#plan };
  }
}

/** Ends a task as part of the command that is under way, and its plan with the last one. */
function end(press: Press, work: LivingWork, { row, plan }: Task, how: 'done' | 'dropped'): void {
  if (row.ended_on !== null) return;
  const dropped_reason = how === 'dropped' ? 'the format was cancelled' : null;
  press.ledger.change('task', row, { standing: how, ended_on: press.today, dropped_reason }, work.id);
  plan.open -= 1;
  if (plan.open === 0) press.ledger.change('plan', plan.row, { ended_on: press.today }, work.id);
}

function addEdition(
  press: Press,
  work: LivingWork,
  coming: ComingEdition,
  before: LivingEdition | null,
): LivingEdition {
  press.command(before ? 'editions.prepareNext' : 'works.create');
  if (!before) work.id = Number(press.add('work', { id: null, title: work.title }, null).id);
  const { dice } = press;
  const row = press.add(
    'edition',
    {
      work_id: work.id,
      number: coming.place,
      title: work.title,
      subtitle: before
        ? (before.row.subtitle ?? '')
        : oneOf(dice, ['', '', 'A Year on the Marsh', 'Told from the Quay']),
      language: before
        ? (before.row.language ?? null)
        : oneOf(dice, ['eng', 'eng', 'eng', 'eng', 'ger', 'fre']),
      imprint: before ? (before.row.imprint ?? null) : dice() < 0.97 ? 'Halyard & Fen' : 'Fen Juniors',
      description: descriptionOf(dice, work.title),
      replaces_id: before?.row.id ?? null,
    },
    work.id,
  );
  const edition_id = row.id ?? null;
  const list = (table: string, rows: Row[]) => {
    for (const [index, given] of rows.entries())
      press.add(table, { edition_id, position: index + 1, ...given }, work.id);
  };
  list('edition_contributor', work.people);
  list('edition_subject', [
    { scheme: 'own', code: 'HARBOUR-LIFE', heading: 'Harbour life' },
    { scheme: 'own', code: `SHELF-${between(dice, 1, 40)}`, heading: '' },
  ]);
  list(
    'edition_keyword',
    keywordsOf(dice, between(dice, 2, 5)).map((keyword) => ({ keyword })),
  );
  const given = { id: Number(row.id), day: isoDay(coming.day), length: between(dice, 8, 40) * 16 };
  return { row, coming, formats: coming.forms.map((form) => addFormat(press, work, given, form)) };
}

/** Plans the release of an edition and puts every step of it on its day. */
function release(press: Press, work: LivingWork, edition: LivingEdition): void {
  const { coming, formats } = edition;
  const plan = new Plan(press, work, edition, 'release', isoDay(coming.day));
  const sent = coming.day - 45;
  const settle = plan.task('settle-data', 'Settle prices, descriptions, subjects and keywords', sent - 5);
  for (const format of formats) {
    const format_id = format.row.id ?? null;
    const submitting = plan.task('submit', `Submit ${nameOf(format)} everywhere`, sent, { format_id });
    let toSend = format.listings.length;
    press.on(dayNumber(press.today) + 5, () => {
      press.command('numbers.assign');
      format.number = press.takeNumber({ format_id, assigned_on: press.today }, work.id);
    });
    if (format.row.form !== 'BC' && press.dice() < 0.03) {
      press.on(coming.day - 100, () => {
        cancel(press, work, format);
        end(press, work, submitting, 'dropped');
      });
      continue;
    }
    for (const listing of format.listings) {
      press.on(workday(sent - between(press.dice, 1, 3)), () => {
        press.command('listings.move');
        step(press, work, format, listing, 'sent');
        toSend -= 1;
        if (toSend === 0) end(press, work, submitting, 'done');
      });
      bringOut(press, work, format, listing, coming.day);
    }
    if (press.dice() < 0.35) changePrice(press, work, format, coming.day + between(press.dice, 200, 1800));
  }
  press.on(sent - between(press.dice, 6, 20), () => {
    press.command('tasks.done');
    end(press, work, settle, 'done');
  });
}

/** Takes an edition off sale everywhere from a day on; asking and being gone are tasks of its plan. */
function retire(press: Press, work: LivingWork, edition: LivingEdition, day: number): void {
  press.on(day - 30, () => {
    const plan = new Plan(press, work, edition, 'retirement', isoDay(day));
    const selling = edition.formats.filter((format) => !hasEnded(format));
    for (const format of selling) {
      const of = { format_id: format.row.id ?? null };
      const removal = plan.task('ask-removal', `Have ${nameOf(format)} removed everywhere`, day + 14, of);
      let left = format.listings.length;
      for (const listing of format.listings) {
        const move = (to: string) => {
          press.command('listings.move');
          step(press, work, format, listing, to);
        };
        press.on(workday(day), () => move('leaving'));
        press.on(workday(day + between(press.dice, 1, 9)), () => {
          move('gone');
          left -= 1;
          if (left === 0) end(press, work, removal, 'done');
        });
      }
    }
    press.on(workday(day + 12), () => {
      for (const format of selling) {
        press.command('retirement.outOfPrint');
        press.add(
          'agency_record',
          { format_id: format.row.id ?? null, out_of_print_on: press.today },
          work.id,
        );
      }
    });
  });
}

/** A description is written anew while the edition sells. */
function redescribe(press: Press, work: LivingWork, edition: LivingEdition, day: number): void {
  press.on(day, () => {
    if (edition.formats.every(hasEnded)) return;
    press.command('editions.update');
    press.ledger.change(
      'edition',
      edition.row,
      { description: descriptionOf(press.dice, work.title) },
      work.id,
    );
  });
}

/** Puts the life of an edition, and of those that follow it, on its days. */
export function live(
  press: Press,
  work: LivingWork,
  coming: ComingEdition,
  before: LivingEdition | null = null,
): void {
  press.on(coming.day - 150, () => {
    const edition = addEdition(press, work, coming, before);
    press.on(coming.day - 145, () => release(press, work, edition));
    if (before) retire(press, work, before, coming.day);
    if (coming.next) live(press, work, coming.next, edition);
    else if (coming.ends !== null) retire(press, work, edition, coming.ends);
    if (press.dice() < 0.3) redescribe(press, work, edition, coming.day + between(press.dice, 60, 1500));
  });
}
