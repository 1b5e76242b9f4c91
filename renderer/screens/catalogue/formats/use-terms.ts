import { FORMAT_SORTS, type FormatSort, type FormatTerms } from '../../../../src/contract/format-list.ts';
import { useQueryParam } from '../../../location.ts';
import type { Sort } from '../../../ui/index.ts';

/** Terms that leave nothing out. */
export const NO_TERMS: FormatTerms = {
  text: '',
  standings: [],
  forms: [],
  channelIds: [],
  listingStandings: [],
  languages: [],
  imprints: [],
  dateOf: 'on sale',
  from: null,
  to: null,
  withFindings: false,
};

/** Terms as short as they can be written in an address. */
function written(terms: FormatTerms): string {
  const said = Object.entries(terms).filter(
    ([key, value]) => JSON.stringify(value) !== JSON.stringify(NO_TERMS[key as keyof FormatTerms]),
  );
  return said.length === 0 ? '' : JSON.stringify(Object.fromEntries(said));
}

/** Terms out of an address; the store checks them again, so a wrong one is refused in a sentence. */
function read(text: string): FormatTerms {
  try {
    return { ...NO_TERMS, ...(JSON.parse(text === '' ? '{}' : text) as Partial<FormatTerms>) };
  } catch {
    return NO_TERMS;
  }
}

const DEFAULT_SORT = 'title';

/** What the table of formats shows and in which order: kept in the address, so that it can be linked to. */
export function useFormatTerms() {
  const [filter, setFilter] = useQueryParam('filter');
  const [order, setOrder] = useQueryParam('sort', DEFAULT_SORT);
  const down = order.startsWith('-');
  const by: FormatSort = FORMAT_SORTS.find((one) => one === (down ? order.slice(1) : order)) ?? DEFAULT_SORT;
  return {
    terms: read(filter),
    filtered: filter !== '',
    setTerms: (terms: FormatTerms) => setFilter(written(terms)),
    sort: { key: by, down },
    by,
    setSort: (sort: Sort) => setOrder(`${sort.down ? '-' : ''}${sort.key}`),
  };
}
