import type { IsbnCheck } from '../../../../src/contract/isbns.ts';
import { Button, Checkbox, TextInput } from '../../../ui/index.ts';
import { fieldHelp } from '../parts/field-help.tsx';
import { type NumberChoice, useIsbnCheck } from './number-choice.ts';

export interface TypedNumberProps {
  choice: NumberChoice;
  set: (part: Partial<NumberChoice>) => void;
  error: string | undefined;
}

const STANDS: Record<NonNullable<IsbnCheck['standing']>, string> = {
  free: 'It is free.',
  reserved: 'It is reserved; taking it here ends the reservation.',
  assigned: 'It already belongs to a format and cannot be taken again.',
  spent: 'It is spent and can never be used again.',
  'outside every block': 'It lies in none of your recorded blocks.',
};

/** What a check found, in words; nothing while the typing goes on. */
function problemOf(check: IsbnCheck | undefined): string | undefined {
  if (!check) return undefined;
  if (check.problem) return [check.problem.message, check.problem.hint].filter(Boolean).join(' ');
  if (check.standing === 'assigned' || check.standing === 'spent') return STANDS[check.standing];
  return undefined;
}

/** A number typed or pasted in any written form, checked while it is typed. */
export function TypedNumber({ choice, set, error }: TypedNumberProps) {
  const check = useIsbnCheck(choice.text);
  const repair = check?.problem?.repair;
  return (
    <div className="stack">
      <TextInput
        label="Number"
        mono
        width="medium"
        value={choice.text}
        onChange={(text) => set({ text, outside: false })}
        help={fieldHelp('isbn', 'With or without hyphens.')}
        error={problemOf(check) ?? error}
        name="isbn"
      />
      <div role="status" className="number-check">
        {check?.ok && check.standing ? (
          <p>
            <span className="mono">{check.hyphenated}</span> {STANDS[check.standing]}
          </p>
        ) : null}
        {repair ? (
          <div className="row">
            <span>Is this meant?</span>
            <Button onClick={() => set({ text: repair })} label={`Use ${repair}`}>
              <span>
                Use <span className="mono">{repair}</span>
              </span>
            </Button>
          </div>
        ) : null}
      </div>
      {check?.ok && check.standing === 'outside every block' ? (
        <Checkbox
          label="It is ours all the same: take it although its block is not recorded"
          checked={choice.outside}
          onChange={(outside) => set({ outside })}
          help="Better: record its block on the Numbers screen first, so that its neighbours are known too."
        />
      ) : null}
    </div>
  );
}
