import { Checkbox, Field, NumberInput } from '../../ui/index.ts';
import type { SettingFields } from './fields.ts';
import { Holidays } from './holidays.tsx';
import type { Changes } from './kept-changes.ts';

/** 1 is Monday, 7 is Sunday, as the contract counts them. */
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** The days of the week that are worked. */
function WorkingDays({ values, change, errorOf }: SettingFields) {
  const set = (day: number, worked: boolean) => {
    const rest = values.workingDays.filter((one) => one !== day);
    change({ workingDays: (worked ? [...rest, day] : rest).toSorted((a, b) => a - b) });
  };
  return (
    <Field
      as="group"
      label="Days that are worked"
      error={errorOf('workingDays')}
      help="Plans count in working days; tasks are not made due on other days."
    >
      {() => (
        <div className="weekdays">
          {WEEKDAYS.map((name, index) => (
            <Checkbox
              key={name}
              label={name}
              checked={values.workingDays.includes(index + 1)}
              onChange={(worked) => set(index + 1, worked)}
            />
          ))}
        </div>
      )}
    </Field>
  );
}

export interface DaysPartProps extends SettingFields {
  /** An emptied field stands for no number, which the contract does not take. */
  overdue: number | undefined;
  changeOverdue: (days: number | undefined) => void;
}

/** Working days, holidays and how long an unanswered request may wait. */
export function DaysPart({ overdue, changeOverdue, ...fields }: DaysPartProps) {
  return (
    <div className="stack">
      <WorkingDays {...fields} />
      <Holidays
        days={fields.values.holidays}
        onChange={(holidays) => fields.change({ holidays } satisfies Changes)}
        error={fields.errorOf('holidays')}
      />
      <NumberInput
        label="A removal request is overdue after"
        name="removalOverdueDays"
        required
        min={1}
        max={365}
        unit="days"
        value={overdue}
        onChange={changeOverdue}
        error={fields.errorOf('removalOverdueDays')}
        help="When a channel has not answered by then, the audit tells you."
      />
    </div>
  );
}
