import { useState } from 'react';
import { formatDay } from '../lib/dates.ts';
import { useAsOf } from '../location.ts';
import { Button, DateInput, Dialog, Sign } from '../ui/index.ts';

/** Chooses the past day that every screen shows. `today` is the last day to choose, once it is known. */
export function AsOfControl({ today }: { today: string | undefined }) {
  const { asOf } = useAsOf();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="as-of" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        <Sign name="day" />
        <span>
          As of <span className="as-of-day">{asOf ?? 'today'}</span>
        </span>
      </button>
      {open ? <AsOfDialog today={today} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

function AsOfDialog({ today, onClose }: { today: string | undefined; onClose: () => void }) {
  const { asOf, setAsOf } = useAsOf();
  const [day, setDay] = useState(asOf ?? today ?? '');
  const late = today !== undefined && day > today;
  const choose = (next: string | undefined) => {
    setAsOf(next === today ? undefined : next);
    onClose();
  };
  return (
    <Dialog open onClose={onClose} title="Show the catalogue as of a past day" width="narrow">
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (day !== '' && !late) choose(day);
        }}
      >
        <DateInput
          label="Day"
          value={day}
          onChange={setDay}
          max={today}
          required
          help="Every screen then shows what the catalogue’s own dates place on that day, for reading only."
          error={late ? `Choose a day up to today, ${formatDay(today)}.` : undefined}
        />
        <div className="row">
          <Button type="submit" kind="primary" disabled={day === ''} reason="Choose a day first.">
            Show that day
          </Button>
          {asOf === undefined ? null : <Button onClick={() => choose(undefined)}>Back to today</Button>}
        </div>
      </form>
    </Dialog>
  );
}
