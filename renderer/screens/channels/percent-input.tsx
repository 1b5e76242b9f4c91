import { formatScaled, parseScaled } from '../../lib/decimal.ts';
import { holdBack, useDraft } from '../../ui/draft.ts';
import { Field, type FieldCommon } from '../../ui/index.ts';

interface PercentInputProps extends FieldCommon {
  /** Basis points: 4000 is 40 %. */
  value: number | undefined;
  onChange: (bp: number | undefined) => void;
}

const MOST = 10_000;

function read(text: string): number | undefined {
  const bp = parseScaled(text.replace('%', ''), 2);
  return bp === undefined || bp > MOST ? undefined : bp;
}

/** A percentage typed with up to two decimals and kept in basis points; an unreadable one keeps the form from being sent. */
export function PercentInput(props: PercentInputProps) {
  const draft = useDraft(props.value, props.onChange, (bp) => formatScaled(bp, 2, undefined, true), read);
  const problem = draft.wrong ? 'Write a percentage from 0 to 100.' : undefined;
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <span className="input-group">
          <input
            {...ids}
            ref={holdBack(problem)}
            className="input input-number"
            type="text"
            inputMode="decimal"
            autoComplete="off"
            name={props.name}
            value={draft.text}
            disabled={props.disabled}
            onChange={(event) => draft.type(event.target.value)}
            onBlur={draft.settle}
          />
          <span className="input-unit">%</span>
        </span>
      )}
    </Field>
  );
}
