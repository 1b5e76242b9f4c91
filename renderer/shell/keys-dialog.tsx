import { Checkbox, Dialog } from '../ui/index.ts';
import { SCREENS } from './screens.ts';
import { useSingleKeys } from './shortcuts.ts';

const OTHERS = [
  { keys: ['Ctrl K'], does: 'Find anything: titles, numbers, people, channels, tasks' },
  { keys: ['Alt ←', 'Alt →'], does: 'Go back and forward' },
  { keys: ['/'], does: 'Go to the search of the screen' },
  { keys: ['?'], does: 'Show these keys' },
  { keys: ['F1'], does: 'Open the help' },
  { keys: ['↑', '↓'], does: 'Move between the rows of a table, from a row’s name' },
  { keys: ['Esc'], does: 'Close a dialog' },
] as const;

/** The keys of the window, and the switch that silences the single ones. */
export function KeysDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  const [on, setOn] = useSingleKeys();
  return (
    <Dialog open={open} onClose={onClose} title="Keys" width="narrow">
      <div className="stack">
        <dl className="keys">
          {SCREENS.map((entry) => (
            <div key={entry.key}>
              <dt>
                <kbd>g</kbd> <kbd>{entry.key}</kbd>
              </dt>
              <dd>{entry.name}</dd>
            </div>
          ))}
          {OTHERS.map((other) => (
            <div key={other.does}>
              <dt>
                {other.keys.map((key) => (
                  <kbd key={key}>{key}</kbd>
                ))}
              </dt>
              <dd>{other.does}</dd>
            </div>
          ))}
        </dl>
        <Checkbox
          label="Single keys work in this window"
          help="Switch them off if you speak to your computer, or press them by mistake."
          checked={on}
          onChange={setOn}
        />
      </div>
    </Dialog>
  );
}
