import { useState } from 'react';
import { formatDay } from '../../lib/dates.ts';
import { useAsOf } from '../../location.ts';
import { Button, DateInput, Toolbar } from '../../ui/index.ts';

/** Chooses the day that the audit speaks of; the whole window follows, as with the day in its head. */
export function DayForm({ today }: { today: string }) {
  const { asOf, setAsOf } = useAsOf();
  const shown = asOf ?? today;
  const [day, setDay] = useState(shown);
  const [seen, setSeen] = useState(shown);
  if (seen !== shown) {
    setSeen(shown);
    setDay(shown);
  }
  const wrong = day === '' || day > today ? `Choose a day up to today, ${formatDay(today)}.` : undefined;
  return (
    <form
      className="audit-day"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong === undefined) setAsOf(day === today ? undefined : day);
      }}
    >
      <Toolbar label="Day of the audit">
        <DateInput label="Audit as of" value={day} onChange={setDay} max={today} error={wrong} />
        <Button type="submit" disabled={day === shown} reason="This day is shown already.">
          Audit this day
        </Button>
        {asOf === undefined ? null : <Button onClick={() => setAsOf(undefined)}>Audit today</Button>}
      </Toolbar>
    </form>
  );
}
