import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import type { CheckDetail } from '../../../../src/contract/proof-checks/checks.ts';
import type { ComparedPages, ComparedSide } from '../../../../src/contract/proof-checks/compare.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Refused, Select } from '../../../ui/index.ts';
import { PagePicture } from './page-picture.tsx';
import { usePictures } from './use-pictures.ts';

/** Changed pages shown one by one; more are counted. */
const MOST_SHOWN = 100;

/** Sets the interior beside another one of the work: which pages changed. */
export function ComparePart({ check }: { check: CheckDetail }) {
  const { data } = useQueryOf('proofChecks.comparable', { checkId: check.id });
  const [other, setOther] = useState('');
  if (!data || data.checks.length === 0) return null;
  const choices = data.checks.map((one) => ({
    value: String(one.checkId),
    label: `${one.fileName} · ${one.of}, checked on ${formatDay(one.checkedOn)}`,
  }));
  return (
    <section className="stack" aria-label="Compare with another interior">
      <h3>Compare with another interior</h3>
      <Select
        label="Before"
        value={other}
        onChange={setOther}
        choices={[{ value: '', label: 'Choose an interior that was checked' }, ...choices]}
        help="An earlier one, such as that of the first edition; the one above is the later."
        name="compare"
      />
      {other === '' ? null : <Compared beforeId={Number(other)} afterId={check.id} />}
    </section>
  );
}

type Comparison = OutputOf<'proofChecks.compare'>;

function Compared({ beforeId, afterId }: { beforeId: number; afterId: number }) {
  const { data, error } = useQueryOf('proofChecks.compare', { beforeId, afterId });
  if (error) return <Refused refusal={error} />;
  if (!data) return <p className="waiting">Comparing the pages…</p>;
  return <Comparison comparison={data} />;
}

function summary({ counts, before, after }: Comparison): string {
  const parts = [
    [counts.changed, 'changed'],
    [counts['put in'], 'put in'],
    [counts['taken out'], 'taken out'],
    [counts.moved, 'moved'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  const pages = `${before.pages} pages before, ${after.pages} after.`;
  return told.length === 0
    ? `No page differs. ${pages}`
    : `Pages: ${told.join(', ')}; ${counts.same} the same. ${pages}`;
}

function Comparison({ comparison }: { comparison: Comparison }) {
  const { before, after, pairs } = comparison;
  const changed = pairs.filter((pair) => pair.state !== 'same');
  const shown = changed.slice(0, MOST_SHOWN);
  const pages = (side: ComparedSide, of: 'before' | 'after') => {
    const kept = new Set(side.pictured.map(({ page }) => page));
    return shown.map((pair) => pair[of]).filter((page) => page !== null && kept.has(page)) as number[];
  };
  const old = usePictures(before.checkId, pages(before, 'before'));
  const now = usePictures(after.checkId, pages(after, 'after'));
  return (
    <>
      <p role="status">{summary(comparison)}</p>
      <ul className="page-pairs" aria-label="Pages that differ">
        {shown.map((pair) => (
          <li key={`${pair.before} ${pair.after}`}>
            <p>{pairText(pair)}</p>
            <div className="page-pair">
              <SidePicture side={before} page={pair.before} pictures={old} name="Before" />
              <SidePicture side={after} page={pair.after} pictures={now} name="After" />
            </div>
          </li>
        ))}
      </ul>
      {changed.length > MOST_SHOWN ? <p className="soft">and {changed.length - MOST_SHOWN} more</p> : null}
    </>
  );
}

function pairText({ state, before, after, what }: ComparedPages): string {
  if (state === 'put in') return `Page ${after} was put in.`;
  if (state === 'taken out') return `Page ${before} was taken out.`;
  if (state === 'moved') return `Page ${before} is now page ${after}.`;
  const from = before === after ? `Page ${after}` : `Page ${after} (before: ${before})`;
  return what === 'look' ? `${from} looks different; its text is the same.` : `${from} has another text.`;
}

interface SidePictureProps {
  side: ComparedSide;
  page: number | null;
  pictures: ReadonlyMap<number, string>;
  name: string;
}

function SidePicture({ side, page, pictures, name }: SidePictureProps) {
  const of = side.pictured.find((one) => one.page === page);
  if (page === null || !of) return null;
  return (
    <figure>
      <PagePicture
        of={of}
        src={pictures.get(page)}
        alt={`${name}: page ${page} of ${side.fileName}`}
        boxes={[]}
        chosen={undefined}
      />
      <figcaption>
        {name}: page {page}
      </figcaption>
    </figure>
  );
}
