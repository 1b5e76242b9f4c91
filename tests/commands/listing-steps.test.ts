import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { moveListing } from '../../src/commands/listing-steps.ts';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { insertTask } from '../../src/store/tasks.ts';
import { MONDAY, openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { seedChannel, seedEdition, seedFormat, seedListing, standingOf } from '../support/seed.ts';

let test: TestFile;
let edition: number;
let paperback: number;
let channel: number;

beforeEach(() => {
  test = openTestFile();
  test.command(({ db }) => {
    edition = seedEdition(db);
    paperback = seedFormat(db, edition);
    channel = seedChannel(db, 'Printworks Direct');
  });
});
afterEach(() => test.close());

const listed = (standing: ListingStanding = 'unsent', format = paperback) =>
  test.command(({ db }) => seedListing(db, format, channel, { standing }));
const move = (id: number, to: ListingStanding, on?: string) =>
  test.command((context) => moveListing(context, { id, to, on, note: 'by hand' }));
const steps = (id: number) =>
  test.file.read.all<{ path: string; on: string; note: string }>(
    'SELECT from_standing || \' → \' || to_standing AS path, on_date AS "on", note FROM listing_step WHERE listing_id = ? ORDER BY id',
    id,
  );

describe('moving a listing', () => {
  it('records every step it passes through, all on the given day', () => {
    const id = listed();
    expect(move(id, 'selling', '2026-02-20')).toMatchObject({ listingId: id, standing: 'selling' });
    expect(steps(id)).toEqual(
      ['unsent → sent', 'sent → proof', 'proof → cleared', 'cleared → selling'].map((path) => ({
        path,
        on: '2026-02-20',
        note: 'by hand',
      })),
    );
    expect(standingOf(test.file.read, id)).toBe('selling');
  });

  it('is dated today when no day is given', () => {
    const id = listed();
    move(id, 'sent');
    expect(steps(id).map((step) => step.on)).toEqual([MONDAY]);
  });

  it('names the fields that the first submission locks: of the edition once, of each format once', () => {
    const first = move(listed(), 'sent').locked;
    expect(first).toContain('title');
    expect(first).toContain('form');
    expect(first).toContain('isbn');

    const hardcover = test.command(({ db }) => seedFormat(db, edition, { form: 'BB' }));
    const second = move(listed('unsent', hardcover), 'sent').locked;
    expect(second).toContain('form');
    expect(second).not.toContain('title');

    const elsewhere = test.command(({ db }) =>
      seedListing(db, paperback, seedChannel(db, 'Broadside Wholesale')),
    );
    expect(move(elsewhere, 'sent').locked).toEqual([]);
  });

  it('names what this channel locks beside them, and all of it again after a recorded correction', () => {
    const id = listed();
    test.command(({ db }) => {
      db.run(`UPDATE channel SET locks_more = '["pages","description"]' WHERE id = ?`, channel);
    });
    expect(move(id, 'sent').locked).toEqual(
      expect.arrayContaining(['title', 'form', 'pages', 'description']),
    );
    move(id, 'unsent');
    test.command(({ db }) => {
      db.run(
        "INSERT INTO correction (edition_id, made_on, reason) VALUES (?, ?, 'Misspelt.')",
        edition,
        MONDAY,
      );
    });
    const again = move(id, 'sent').locked;
    expect(again).toEqual(expect.arrayContaining(['title', 'form']));
    expect(again).not.toContain('pages');
  });

  it('does not lock again when a refused listing is sent anew', () => {
    const id = listed();
    move(id, 'proof');
    expect(move(id, 'unsent').locked).toEqual([]);
    expect(move(id, 'sent').locked).toEqual([]);
  });
});

describe('a move that cannot be', () => {
  it('is refused with where the listing stands, what is impossible and what would help', () => {
    const refused = refusalOf(() => move(listed('selling'), 'unsent'));
    expect(refused.code).toBe('STEP_REFUSED');
    expect(refused.message).toBe(
      "Paperback on Printworks Direct stands at 'selling' and cannot move to 'unsent'. Once on sale it is not taken back: move it to 'leaving', and to 'gone' when it no longer shows.",
    );
  });

  it('is refused back to a standing it passed, and to where it stands', () => {
    const id = listed('proof');
    expect(refusalOf(() => move(id, 'sent')).code).toBe('STEP_REFUSED');
    expect(refusalOf(() => move(id, 'proof')).message).toContain("already stands at 'proof'");
    expect(steps(id)).toHaveLength(2);
  });

  it('is refused for a format without a number', () => {
    const bare = test.command(({ db }) => seedFormat(db, edition, { form: 'ED', number: false }));
    const refused = refusalOf(() => move(listed('unsent', bare), 'sent'));
    expect([refused.code, refused.message]).toEqual([
      'NOT_READY',
      'E-book on Printworks Direct cannot be sent because the format has no number yet; take one for it first.',
    ]);
  });

  it('is refused on a day to come and on a day before the last step', () => {
    const id = listed('sent');
    expect(refusalOf(() => move(id, 'proof', '2026-03-03'))).toMatchObject({
      code: 'STEP_REFUSED',
      field: 'on',
    });
    const early = refusalOf(() => move(id, 'proof', '2026-02-01'));
    expect(early).toMatchObject({ code: 'STEP_REFUSED', field: 'on' });
    expect(early.message).toContain('choose 2026-02-02 or later');
    expect(move(id, 'proof', '2026-02-02').standing).toBe('proof');
  });

  it('is refused once the format is retired, even for a listing that was never sent', () => {
    const other = listed();
    test.command(({ db }) =>
      seedListing(db, paperback, seedChannel(db, 'Lanternshelf'), { standing: 'gone' }),
    );
    const refused = refusalOf(() => move(other, 'sent'));
    expect(refused.code).toBe('STEP_REFUSED');
    expect(refused.message).toContain('its format is retired');
  });

  it('is refused for a listing that does not exist', () => {
    expect(refusalOf(() => move(999, 'sent')).code).toBe('NOT_FOUND');
  });
});

describe('tasks of a moved listing', () => {
  const withTasks = (kinds: string[], standing: ListingStanding) => {
    const id = listed(standing);
    test.command(({ db }) => {
      for (const kind of kinds)
        insertTask(db, { kind, title: kind, dueOn: '2026-03-20', note: 'a hint', listingId: id });
    });
    return id;
  };
  const left = (id: number) =>
    test.file.read
      .all<{ kind: string }>(
        "SELECT kind FROM task WHERE listing_id = ? AND standing = 'open' ORDER BY id",
        id,
      )
      .map((task) => task.kind);

  it('end with the step that makes them superfluous, on its day', () => {
    const id = withTasks(['submit', 'check-proof', 'approve', 'on-sale', 'check-page'], 'unsent');
    move(id, 'proof', '2026-02-27');
    expect(left(id)).toEqual(['approve', 'on-sale', 'check-page']);
    expect(
      test.file.read.all('SELECT standing, ended_on, note FROM task WHERE kind = ?', 'check-proof'),
    ).toEqual([{ standing: 'done', ended_on: '2026-02-27', note: 'a hint\ndone with the step' }]);
  });

  it('end with chasing once the listing is gone', () => {
    const id = withTasks(['ask-removal', 'chase', 'confirm-gone'], 'selling');
    move(id, 'leaving');
    expect(left(id)).toEqual(['chase', 'confirm-gone']);
    move(id, 'gone');
    expect(left(id)).toEqual([]);
  });

  it('stay when the listing is taken back, except the task to take it back', () => {
    const id = withTasks(['on-sale', 'take-back'], 'cleared');
    move(id, 'unsent');
    expect(left(id)).toEqual(['on-sale']);
  });

  it('stay when a request to stop selling is withdrawn', () => {
    const id = withTasks(['chase', 'confirm-gone'], 'leaving');
    move(id, 'selling');
    expect(left(id)).toEqual(['chase', 'confirm-gone']);
  });
});
