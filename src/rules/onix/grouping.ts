import type { Contributor } from '../../contract/editions.ts';

// Which products belong to one work, and which are formats of one edition: proposed from what the products say of each
// other, else from title and first contributor. Nothing is settled here: a person confirms it.

/** What grouping looks at. Rows stand in the order of the message. */
export interface GroupRow {
  row: number;
  isbn13: string | null;
  title: string;
  subtitle: string;
  number: number | null;
  language: string;
  contributors: readonly Contributor[];
  form: string;
  formDetail: string | null;
  related: readonly { codes: readonly string[]; isbn13: string }[];
  works: readonly string[];
}

/** An edition of the catalogue that rows may belong to. */
export interface KnownEdition {
  workId: number;
  editionId: number;
  title: string;
  subtitle: string;
  number: number | null;
  language: string;
  /** `form detail` of each of its formats. */
  forms: readonly string[];
  numbers: readonly string[];
}

/** What the catalogue knows: the edition of a number, and the editions under a title and first contributor. */
export interface KnownCatalogue {
  ofNumber(isbn13: string): KnownEdition | null;
  ofName(nameKey: string): readonly KnownEdition[];
  ofWork(workId: number): readonly KnownEdition[];
}

export interface Placing {
  row: number;
  /** `w12` is the catalogue's work 12; `n3` a new one. */
  work: string;
  /** `e34` is the catalogue's edition 34; `n3.1` a new one. */
  edition: string;
  why: string;
}

const plain = (text: string) =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** What two products of one work have alike: the title and the name of the first contributor. */
export function nameKey(title: string, contributors: readonly Contributor[]): string {
  return `${plain(title)}|${plain(contributors[0]?.name ?? '')}`;
}

/** List 51: same content in another form; and the steps between editions. */
const SAME_EDITION = ['06', '13', '27'];
const SAME_WORK = [...SAME_EDITION, '03', '05'];

const formKey = (row: Pick<GroupRow, 'form' | 'formDetail'>) => `${row.form} ${row.formDetail ?? ''}`;

/** Sets that grow together: each row's root names its set. */
class Sets {
  readonly #parents: number[];

  constructor(count: number) {
    this.#parents = Array.from({ length: count }, (_, index) => index);
  }

  root(index: number): number {
    let at = index;
    while (this.#parents[at] !== at) {
      const parent = this.#parents[at] ?? at;
      this.#parents[at] = this.#parents[parent] ?? parent;
      at = this.#parents[at] ?? at;
    }
    return at;
  }

  join(a: number, b: number): void {
    const [first, second] = [this.root(a), this.root(b)].sort((x, y) => x - y);
    if (first !== undefined && second !== undefined) this.#parents[second] = first;
  }
}

/** The rows of one work, by their places in the list. */
function workSets(rows: readonly GroupRow[]): Sets {
  const sets = new Sets(rows.length);
  const byNumber = new Map<string, number>();
  for (const [index, row] of rows.entries()) if (row.isbn13) byNumber.set(row.isbn13, index);
  const seen = new Map<string, number>();
  const meet = (key: string, index: number) => {
    const other = seen.get(key);
    if (other === undefined) seen.set(key, index);
    else sets.join(other, index);
  };
  for (const [index, row] of rows.entries()) {
    if (row.title !== '') meet(`name ${nameKey(row.title, row.contributors)}`, index);
    for (const work of row.works) meet(`work ${work}`, index);
    for (const { codes, isbn13 } of row.related) {
      const other = byNumber.get(isbn13);
      if (other !== undefined && codes.some((code) => SAME_WORK.includes(code))) sets.join(index, other);
    }
  }
  return sets;
}

interface Group {
  key: string;
  title: string;
  subtitle: string;
  number: number | null;
  language: string;
  forms: Set<string>;
  numbers: Set<string>;
}

const sameVersion = (a: Pick<Group, 'number' | 'language'>, b: Pick<GroupRow, 'number' | 'language'>) =>
  a.number === b.number && a.language === b.language;

const sameName = (a: Pick<Group, 'title' | 'subtitle'>, b: Pick<GroupRow, 'title' | 'subtitle'>) =>
  plain(a.title) === plain(b.title) && plain(a.subtitle) === plain(b.subtitle);

/** The edition of a work that a row belongs to, with the reason; undefined where it begins one. */
function editionFor(row: GroupRow, groups: readonly Group[]): { group: Group; why: string } | undefined {
  const linked = new Set(
    row.related
      .filter(({ codes }) => codes.some((code) => SAME_EDITION.includes(code)))
      .map(({ isbn13 }) => isbn13),
  );
  const byLink = groups.find(
    (group) => sameVersion(group, row) && [...group.numbers].some((isbn13) => linked.has(isbn13)),
  );
  if (byLink) return { group: byLink, why: 'Named as another format of this edition.' };
  const byName = groups.find(
    (group) => sameVersion(group, row) && sameName(group, row) && !group.forms.has(formKey(row)),
  );
  return byName && { group: byName, why: 'Same title, edition and language.' };
}

function groupOf(key: string, from: Pick<GroupRow, 'title' | 'subtitle' | 'number' | 'language'>): Group {
  const { title, subtitle, number, language } = from;
  return { key, title, subtitle, number, language, forms: new Set(), numbers: new Set() };
}

/** The work of the catalogue that rows belong to: by their own numbers, by numbers they name, else by their name. */
function knownWork(rows: readonly GroupRow[], catalogue: KnownCatalogue): { id: number; why: string } | null {
  for (const { isbn13 } of rows) {
    const known = isbn13 === null ? null : catalogue.ofNumber(isbn13);
    if (known) return { id: known.workId, why: 'Its number is in the catalogue.' };
  }
  for (const { related } of rows)
    for (const { codes, isbn13 } of related) {
      const known = codes.some((code) => SAME_WORK.includes(code)) ? catalogue.ofNumber(isbn13) : null;
      if (known) return { id: known.workId, why: 'It names a number of this work.' };
    }
  for (const row of rows) {
    const [named] = row.title === '' ? [] : catalogue.ofName(nameKey(row.title, row.contributors));
    if (named)
      return { id: named.workId, why: 'Same title and first contributor as a work of the catalogue.' };
  }
  return null;
}

function placeRows(rows: readonly GroupRow[], key: string, catalogue: KnownCatalogue): Placing[] {
  const known = knownWork(rows, catalogue);
  const work = known ? `w${known.id}` : key;
  const groups: Group[] = (known ? catalogue.ofWork(known.id) : []).map((edition) => {
    const group = groupOf(`e${edition.editionId}`, edition);
    for (const form of edition.forms) group.forms.add(form);
    for (const isbn13 of edition.numbers) group.numbers.add(isbn13);
    return group;
  });
  let made = 0;
  return rows.map((row): Placing => {
    const own = row.isbn13 === null ? null : catalogue.ofNumber(row.isbn13);
    const [found, why] = ((): [Group | undefined, string] => {
      if (own)
        return [groups.find((group) => group.key === `e${own.editionId}`), 'Its number is in the catalogue.'];
      const edition = editionFor(row, groups);
      return [edition?.group, edition?.why ?? ''];
    })();
    const group = found ?? groupOf(`${key}.${++made}`, row);
    if (!found) groups.push(group);
    group.forms.add(formKey(row));
    if (row.isbn13) group.numbers.add(row.isbn13);
    return { row: row.row, work, edition: group.key, why: why || (known?.why ?? 'New.') };
  });
}

/** Proposes a work and an edition for every row. */
export function proposeGroups(rows: readonly GroupRow[], catalogue: KnownCatalogue): Placing[] {
  const sets = workSets(rows);
  const byWork = Map.groupBy(
    rows.map((row, index) => ({ row, root: sets.root(index) })),
    ({ root }) => root,
  );
  return [...byWork.entries()]
    .flatMap(([root, members]) => {
      const own = members.map(({ row }) => row);
      return placeRows(own, `n${rows[root]?.row ?? root}`, catalogue);
    })
    .sort((a, b) => a.row - b.row);
}
