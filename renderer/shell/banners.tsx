import type { OutputOf } from '../../src/contract/index.ts';
import { formatDay } from '../lib/dates.ts';
import { useAsOf } from '../location.ts';
import { Button } from '../ui/index.ts';

/** What every screen must say about itself: a past day, a demo, a catalogue open for reading only. */
export function Banners({ info }: { info: OutputOf<'catalogue.info'> | undefined }) {
  const { asOf, setAsOf } = useAsOf();
  return (
    <div className="banners">
      {asOf === undefined ? null : (
        <div className="banner banner-past">
          <p>
            As of <time dateTime={asOf}>{formatDay(asOf)}</time> — read only
          </p>
          <Button onClick={() => setAsOf(undefined)}>Back to today</Button>
        </div>
      )}
      {info?.readOnly ? (
        <div className="banner banner-past">
          <p>This catalogue is open for reading only.</p>
        </div>
      ) : null}
      {info?.demo ? (
        <div className="banner banner-demo">
          <p>Demo catalogue: its numbers are invented and must never be printed.</p>
        </div>
      ) : null}
    </div>
  );
}
