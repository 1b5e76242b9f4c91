import { Link } from 'wouter';
import { useCommand } from '../../api.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Refused } from '../../ui/index.ts';
import { counted } from './words.ts';

/** The demo press with one press of a button. */
function DemoWay() {
  const demo = useCommand('catalogue.demo');
  const readOnly = useReadOnly();
  const load = async () => {
    const answer = await demo.run(
      {},
      (loaded) => `The demo press is loaded: ${counted(loaded.works, 'work')}.`,
    );
    // The button has gone with the empty catalogue; the heading stays.
    if (answer.ok) document.querySelector('h1')?.focus();
  };
  return (
    <li>
      <h2>Look around in the demo</h2>
      <p>
        An invented press with four works, from a planned audiobook to a retired primer. Its numbers are
        invented and must never be printed. To start for real afterwards, open another catalogue file.
      </p>
      <Button
        pending={demo.pending}
        disabled={readOnly !== undefined}
        reason={readOnly}
        onClick={() => void load()}
      >
        Load the demo
      </Button>
      <Refused refusal={demo.refusal} />
    </li>
  );
}

/** What the program is for. */
export function FirstWords() {
  return (
    <p className="first-run-lead">
      Edition Ledger keeps the life of your books in one file: which ISBN belongs to which edition and format,
      where each is on sale, and what has to be done on which day. Once a book was sent out, what identifies
      it can no longer be changed by mistake, and every change stays on record.
    </p>
  );
}

/** The ways to begin beside the guided start; with that put away, the way back to it. */
export function FirstRun({ onGuide }: { onGuide: (() => void) | undefined }) {
  return (
    <ul className="first-run-ways" aria-label="Other ways to begin">
      {onGuide ? (
        <li>
          <h2>Begin step by step</h2>
          <p>Publisher, block of numbers, first work and first format, one after the other.</p>
          <Button kind="primary" onClick={onGuide}>
            Show the guided start
          </Button>
        </li>
      ) : null}
      <DemoWay />
      <li>
        <h2>Bring your list along</h2>
        <p>Your books stand in a spreadsheet already? Import it, or drop the file anywhere here.</p>
        <Link href="/catalogue/import" className="button button-plain">
          Import a list
        </Link>
      </li>
    </ul>
  );
}
