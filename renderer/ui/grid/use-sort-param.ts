import { useQueryParam } from '../../location.ts';
import type { Sort } from '../table-sort.ts';

/** The order of a list, kept in the address as `title` or `-title`; one of `sorts`, the first where none is given. */
export function useSortParam<By extends string>(sorts: readonly [By, ...By[]], firstDown = false) {
  const first = `${firstDown ? '-' : ''}${sorts[0]}`;
  const [order, setOrder] = useQueryParam('sort', first);
  const wanted = order.replace(/^-/, '');
  const known = sorts.find((one) => one === wanted);
  const down = known === undefined ? firstDown : order.startsWith('-');
  const by = known ?? sorts[0];
  return {
    by,
    sort: { key: by, down },
    setSort: (sort: Sort) => setOrder(`${sort.down ? '-' : ''}${sort.key}`),
  };
}
