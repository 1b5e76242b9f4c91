import { useMemo, useState } from 'react';
import type { OnixRow } from '../../../../src/contract/onix.ts';
import { Button } from '../../../ui/index.ts';
import { ProductRow } from './product-row.tsx';
import type { Preview } from './words.ts';

/** Works shown at first, and more with each press. */
const PAGE = 50;

export interface PreviewListProps {
  preview: Preview;
  taken: ReadonlySet<number>;
  disabled: boolean;
  onTake: (row: OnixRow, taken: boolean) => void;
  onPlace: (row: OnixRow, place: { work: string; edition: string }) => void;
}

/** The products of a message under the works and editions they are proposed for. */
export function PreviewList({ preview, taken, disabled, onTake, onPlace }: PreviewListProps) {
  const [shown, setShown] = useState(PAGE);
  const product = (row: OnixRow) => (
    <ProductRow
      key={row.row}
      row={row}
      works={preview.works}
      taken={taken.has(row.row)}
      disabled={disabled}
      onTake={(take) => onTake(row, take)}
      onPlace={(place) => onPlace(row, place)}
    />
  );
  const placed = useMemo(
    () => Map.groupBy(preview.rows, (row) => (row.state === 'refused' ? '' : `${row.work}/${row.edition}`)),
    [preview],
  );
  const rowsOf = (work: string, edition: string) => placed.get(`${work}/${edition}`) ?? [];
  // Two works may have one title, as two books of different people do.
  const nameOf = ({ key, title, editions }: Preview['works'][number]) =>
    `${title}, from row ${editions.flatMap((edition) => rowsOf(key, edition.key))[0]?.row ?? 0}`;
  const refused = placed.get('') ?? [];
  const more = preview.works.length - shown;
  return (
    <>
      {refused.length > 0 ? (
        <section aria-label="Cannot be taken" className="onix-work">
          <h3>Cannot be taken</h3>
          <ul className="onix-products">{refused.map(product)}</ul>
        </section>
      ) : null}
      {preview.works.slice(0, shown).map((work) => (
        <section key={work.key} aria-label={nameOf(work)} className="onix-work">
          <h3>
            {work.title} <small>{work.id === null ? 'a new work' : 'in the catalogue'}</small>
          </h3>
          {work.editions.map((edition) => (
            <div key={edition.key}>
              <h4>
                {edition.label}{' '}
                <small>
                  {edition.id === null ? 'a new edition' : 'in the catalogue'}
                  {edition.replaces
                    ? `, replaces ${work.editions.find((one) => one.key === edition.replaces)?.label ?? 'another'}`
                    : ''}
                </small>
              </h4>
              <ul className="onix-products">{rowsOf(work.key, edition.key).map(product)}</ul>
            </div>
          ))}
        </section>
      ))}
      {more > 0 ? (
        <Button onClick={() => setShown(shown + PAGE)}>Show more works ({more.toLocaleString()} left)</Button>
      ) : null}
    </>
  );
}
