import type { Edition } from '../../../../src/contract/editions.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { useAsOf } from '../../../location.ts';
import './advice.css';
import { Verdict } from './verdict.tsx';

type Kept = OutputOf<'editions.keptAdvice'>['kept'][number];

function KeptAnswer({ kept }: { kept: Kept }) {
  const byFormat = Map.groupBy(kept.lines, (line) => line.formatName);
  return (
    <li>
      <p>
        <time dateTime={kept.madeOn}>{formatDay(kept.madeOn)}</time> <Verdict value={kept.verdict} />
      </p>
      {kept.note === '' ? null : <p className="prose">“{kept.note}”</p>}
      <dl className="kept-lines">
        {[...byFormat].map(([name, lines]) => (
          <div key={name}>
            <dt>{name}</dt>
            {lines.map((line) => (
              <dd key={line.title}>
                <Verdict value={line.verdict} /> {line.title}
                {line.detail === '' ? '' : ` (${line.detail})`}. {line.rule}{' '}
                <span className="soft advice-source">{line.source}</span>
              </dd>
            ))}
          </div>
        ))}
      </dl>
    </li>
  );
}

/** Why an edition took new numbers or kept them, as it was stated and answered then; behind a line that opens it. */
export function KeptAdvice({ edition }: { edition: Edition }) {
  const { asOf } = useAsOf();
  const kept = useQueryOf('editions.keptAdvice', {
    editionId: edition.id,
    ...(asOf === undefined ? {} : { asOf }),
  }).data?.kept;
  if (!kept || kept.length === 0) return null;
  return (
    <details className="compare">
      <summary>New edition or reprint: what was answered</summary>
      <ol className="kept-advice">
        {kept.map((one) => (
          <KeptAnswer key={one.id} kept={one} />
        ))}
      </ol>
    </details>
  );
}
