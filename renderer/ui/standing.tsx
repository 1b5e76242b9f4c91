import type { Severity } from '../../src/contract/audit.ts';
import type {
  FormatStanding,
  ListingStanding,
  NumberStanding,
  TaskStanding,
} from '../../src/contract/terms.ts';
import { SHAPES, Shape } from './standing-shapes.tsx';

/** What stands where: the kind of thing and its standing, in the words of the contract. */
export type StandingProps = (
  | { of: 'number'; value: NumberStanding }
  | { of: 'format'; value: FormatStanding }
  | { of: 'listing'; value: ListingStanding }
  | { of: 'task'; value: TaskStanding }
  | { of: 'severity'; value: Severity }
) & {
  /** Said after the word, such as `since 2024-05-01`. */
  detail?: string | undefined;
};

const TONES: Record<string, 'going' | 'care' | 'stop' | 'quiet'> = {
  assigned: 'going',
  live: 'going',
  selling: 'going',
  done: 'going',
  proofing: 'care',
  proof: 'care',
  retiring: 'care',
  leaving: 'care',
  waiting: 'care',
  'should fix': 'care',
  spent: 'stop',
  cancelled: 'stop',
  'must fix': 'stop',
  retired: 'quiet',
  gone: 'quiet',
  dropped: 'quiet',
};

function shapeOf(props: StandingProps) {
  const family: Record<string, React.ReactNode> = SHAPES[props.of];
  return family[props.value];
}

/** A standing as word and shape; its colour only supports them. */
export function Standing(props: StandingProps) {
  return (
    <span className={`standing standing-${TONES[props.value] ?? 'plain'}`}>
      <Shape>{shapeOf(props)}</Shape>
      <span>
        {props.value}
        {props.detail ? <span className="standing-detail"> {props.detail}</span> : null}
      </span>
    </span>
  );
}
