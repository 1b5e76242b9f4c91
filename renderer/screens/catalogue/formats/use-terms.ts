import { FORMAT_SORTS, type FormatTerms } from '../../../../src/contract/format-list.ts';
import { useQueryParam } from '../../../location.ts';
import { useSortParam } from '../../../ui/grid/use-sort-param.ts';

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

/** What the table of formats shows and in which order: kept in the address, so that it can be linked to. */
export function useFormatTerms() {
  const [filter, setFilter] = useQueryParam('filter');
  const order = useSortParam(FORMAT_SORTS);
  return {
    terms: read(filter),
    filtered: filter !== '',
    setTerms: (terms: FormatTerms) => setFilter(written(terms)),
    ...order,
  };
}
