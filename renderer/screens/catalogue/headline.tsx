import { Link } from 'wouter';
import type { OutputOf } from '../../../src/contract/index.ts';
import { counted, standingsInWords } from './words.ts';

interface HeadlineProps {
  status: OutputOf<'catalogue.status'>;
  /** A past day; what is to do today is then left out. */
  asOf: string | undefined;
}

/** What stands where in one sentence, and what is due. */
export function Headline({ status, asOf }: HeadlineProps) {
  const { openTasks, overdueTasks, numbers } = status;
  return (
    <>
      <p className="catalogue-headline">
        {standingsInWords(status.formats)} ·{' '}
        <Link href="/numbers">{counted(numbers.free, 'number')} left</Link>
      </p>
      {asOf === undefined && openTasks > 0 ? (
        <p>
          <Link href="/agenda">{counted(openTasks, 'task')} to do</Link>
          {overdueTasks > 0 ? `, ${overdueTasks.toLocaleString()} overdue` : ', none overdue'}
        </p>
      ) : null}
    </>
  );
}
