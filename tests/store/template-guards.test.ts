import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openCatalogueFile } from '../../src/store/catalogue-file.ts';
import { examine } from '../../src/store/examine.ts';
import { MIGRATIONS, readMigrations } from '../../src/store/migrate.ts';
import { currentText, textVersions } from '../../src/store/templates.ts';
import { openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';

describe('a request text kept among the settings of form 4', () => {
  const AT = '2026-03-09T10:00:00.000Z';
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  /** A file of form 4 with the settings and a channel, opened by this program. */
  function upgraded(value: string | undefined) {
    const steps = mkdtempSync(join(folder, 'steps-'));
    for (const { name } of readMigrations(MIGRATIONS).slice(0, 4))
      copyFileSync(join(MIGRATIONS, name), join(steps, name));
    const path = join(folder, 'press.ledger');
    const old = openCatalogueFile(path, { at: AT, migrations: steps });
    old.change('settings.update', AT, (db) => {
      db.run("INSERT INTO channel (name, request_template) VALUES ('Lanternshelf', 'Own: {title}')");
      if (value !== undefined)
        db.run("INSERT INTO setting (name, value) VALUES ('requestTemplate', ?)", value);
    });
    old.close();
    return openCatalogueFile(path, { at: AT });
  }

  it('is the first version of the removal request, word for word', () => {
    const file = upgraded(JSON.stringify('Dear {channel},\nplease "drop" {title} ({isbn}).'));
    expect(currentText(file.read, 'removal request')).toMatchObject({
      version: 1,
      body: 'Dear {channel},\nplease "drop" {title} ({isbn}).',
      savedOn: '2026-03-09',
    });
    expect(textVersions(file.read, 'removal request').map(({ version }) => version)).toEqual([1, 0]);
    expect(currentText(file.read, 'chase').version).toBe(0);
    expect(file.read.one('SELECT request_template AS own FROM channel')).toEqual({ own: 'Own: {title}' });
    expect(examine(file.read).faults).toEqual([]);
    file.close();
  });

  it.each([
    ['nothing kept', undefined],
    ['an empty one', '"  "'],
    ['no text', '17'],
  ])('leaves ours in use with %s', (_name, value) => {
    const file = upgraded(value);
    expect(currentText(file.read, 'removal request').version).toBe(0);
    file.close();
  });
});

describe('versions', () => {
  let test: TestFile;
  beforeEach(() => {
    test = openTestFile();
    for (const version of [1, 2]) sql(insert(version));
  });
  afterEach(() => test.close());
  const sql = (text: string) => test.command(({ db }) => db.run(text));
  const insert = (version: number) =>
    `INSERT INTO text_template (kind, version, body, saved_on) VALUES ('chase', ${version}, 'Again.', '2026-03-02')`;

  it.each([
    ['out of turn', insert(4), 'STEP_REFUSED'],
    ['twice', insert(2), 'ALREADY_EXISTS'],
    ['changed', "UPDATE text_template SET body = 'x'", 'FIELD_LOCKED'],
    ['removed from the middle', 'DELETE FROM text_template WHERE version = 1', 'FIELD_LOCKED'],
  ])('are refused %s by the file itself', (_name, text, code) => {
    expect(refusalOf(() => sql(text)).code).toBe(code);
  });
});
