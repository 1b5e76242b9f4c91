import { Link } from 'wouter';
import { NUMBER_STANDINGS } from '../../../src/contract/terms.ts';
import { formatDay } from '../../lib/dates.ts';
import { Standing } from '../../ui/index.ts';
import { counted, standingsInWords } from '../catalogue/words.ts';
import { type Audit, severitiesInWords, standingCounts } from './words.ts';

/** What the audit says, in two sentences under the heading. */
export function Summary({ audit }: { audit: Audit }) {
  const past = audit.asOf !== audit.today;
  return (
    <>
      <p className="audit-headline">
        As of {formatDay(audit.asOf)}
        {past ? '' : ' (today)'}: {standingsInWords(standingCounts(audit.formats))} ·{' '}
        {counted(audit.numbers.free, 'number')} left
      </p>
      <p>
        {severitiesInWords(audit.findings)}, by {counted(audit.rules, 'rule')}
        {audit.accepted.length > 0 ? `; ${audit.accepted.length.toLocaleString()} accepted` : ''}
      </p>
      {past ? (
        <p>
          Standings, numbers and plans are those of that day; descriptions, prices and other open fields are
          as they are now.
        </p>
      ) : null}
    </>
  );
}

/** How many numbers stand where. */
export function NumbersLeft({ numbers }: { numbers: Audit['numbers'] }) {
  return (
    <>
      <ul className="audit-numbers" aria-label="Numbers by standing">
        {NUMBER_STANDINGS.map((standing) => (
          <li key={standing}>
            {numbers[standing].toLocaleString()} <Standing of="number" value={standing} />
          </li>
        ))}
      </ul>
      <p>
        <Link href="/numbers">Open the numbers</Link>
      </p>
    </>
  );
}
