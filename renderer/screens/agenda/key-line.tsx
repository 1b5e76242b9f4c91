import { useSingleKeys } from '../../shell/shortcuts.ts';

const KEYS = [
  { keys: ['j', 'k'], does: 'next and previous task' },
  { keys: ['d'], does: 'done' },
  { keys: ['w'], does: 'wait' },
  { keys: ['e'], does: 'other day' },
  { keys: ['x'], does: 'drop' },
] as const;

/** The keys of the agenda, said once; silent where single keys are switched off. */
export function KeyLine() {
  const [on] = useSingleKeys();
  if (!on) return null;
  return (
    <p className="key-line">
      {KEYS.map(({ keys, does }) => (
        <span key={does}>
          {keys.map((key) => (
            <kbd key={key}>{key}</kbd>
          ))}{' '}
          {does}
        </span>
      ))}
    </p>
  );
}
