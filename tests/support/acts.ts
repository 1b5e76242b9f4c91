import type { Window } from './browser.ts';

/** What a person does on the screens, in the words of the main job. */
export function acts(w: Window) {
  /** A field of the dialog on top by its label; a mark of being required may follow the words. */
  const field = (label: string | RegExp) =>
    w.page
      .locator('dialog[open]')
      .last()
      .getByLabel(
        typeof label === 'string'
          ? new RegExp(`^${label.replaceAll(/[()]/g, '\\$&')}\\W*(required)?\\W*$`)
          : label,
      );
  const closed = async () => {
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
  };
  const standings = async () => {
    const { list } = await w.call('catalogue.status', {});
    return list.map((row) => `${row.editionLabel} ${row.name}: ${row.standing}`).sort();
  };

  /** Ticks boxes and chooses ways in the dialog on top, by their words. */
  async function say(...words: string[]): Promise<void> {
    for (const word of words)
      await w.page.locator('dialog[open]').last().getByLabel(word, { exact: true }).check();
  }

  async function addFormat(edition: string, form: string, more: () => Promise<void>): Promise<void> {
    await w.press(`Add a format: ${edition}`);
    await field('Product form').selectOption(form);
    await more();
    await w.press('Add the format');
    await closed();
  }

  async function addPrice(amount: string): Promise<void> {
    await w.press('Add a price');
    await field('Price 1').fill(amount);
  }

  async function takeNumber(format: string): Promise<void> {
    await w.press(`Take a number: ${format}`);
    await w.press('Take this number for ever');
    await closed();
  }

  async function list(format: string, channel: string): Promise<void> {
    await w.press(`Add a listing: ${format}`);
    await field('Channel').selectOption({ label: channel });
    await w.press(/^List|^Add/);
    await closed();
  }

  /** Moves a listing that was never sent straight to selling, on a past day, accepting what locks. */
  async function putOnSale(listing: string, on: string, locks: boolean): Promise<void> {
    await w.press(`Move: ${listing}`);
    await field('It moves to').selectOption('selling');
    await field('On which day').fill(on);
    await w.press(locks ? 'Record selling and lock these fields' : /^Record selling/);
    await closed();
  }

  /** Marks every task of the agenda done that can be done now, until none is left. */
  async function finishAllTasks(): Promise<number> {
    let done = 0;
    for (;;) {
      const { tasks } = await w.call('tasks.list', {});
      const ready = tasks.find((task) => task.needs.length === 0);
      if (!ready) return done;
      await w.page
        .getByRole('button', { name: `Done: ${ready.title}`, exact: true })
        .first()
        .click();
      await w.press(/^Mark done/);
      await closed();
      done += 1;
      if (done > 80) throw new Error('The agenda never ends.');
    }
  }

  return { field, closed, standings, say, addFormat, addPrice, takeNumber, list, putOnSale, finishAllTasks };
}
