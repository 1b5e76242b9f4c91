import { useId, useState } from 'react';
import { formatDay, isDay } from '../../lib/dates.ts';
import { announce } from '../../status.ts';
import { Button, DateInput, IconButton } from '../../ui/index.ts';

interface HolidaysProps {
  days: readonly string[];
  onChange: (days: string[]) => void;
  error: string | undefined;
}

function weekday(day: string): string {
  return new Intl.DateTimeFormat(undefined, { weekday: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
}

function HolidayList({ days, onRemove }: { days: readonly string[]; onRemove: (day: string) => void }) {
  if (days.length === 0) return <p className="soft">None yet.</p>;
  return (
    <ul className="holidays">
      {days.map((day) => (
        <li key={day}>
          <time dateTime={day} className="mono">
            {formatDay(day)}
          </time>
          <span className="soft">{weekday(day)}</span>
          <IconButton
            sign="close"
            label={`Remove ${formatDay(day)}`}
            labelHidden
            onClick={() => onRemove(day)}
          />
        </li>
      ))}
    </ul>
  );
}

/** Single days that are not worked, in order, with what adds and removes them. */
export function Holidays({ days, onChange, error }: HolidaysProps) {
  const [day, setDay] = useState('');
  const [asked, setAsked] = useState(false);
  const heading = useId();
  const double = days.includes(day);
  const problem = double ? 'This day is already in the list.' : 'Choose the day first.';
  const wrong = !isDay(day) || double;
  const add = () => {
    setAsked(wrong);
    if (wrong) return;
    onChange([...days, day].toSorted());
    announce(`${formatDay(day)} is added; save to keep it.`);
    setDay('');
  };
  return (
    <section className="stack" aria-labelledby={heading}>
      <h3 id={heading}>Holidays</h3>
      <p className="soft">Single days that are not worked, beside the days of the week above.</p>
      <div className="row holiday-add">
        <DateInput
          label="Day to add"
          value={day}
          onChange={(next) => {
            setDay(next);
            setAsked(false);
          }}
          error={error ?? (asked && wrong ? problem : undefined)}
        />
        <Button onClick={add}>Add the day</Button>
      </div>
      <HolidayList
        days={days}
        onRemove={(gone) => {
          onChange(days.filter((one) => one !== gone));
          announce(`${formatDay(gone)} is taken out; save to keep it so.`);
        }}
      />
    </section>
  );
}
