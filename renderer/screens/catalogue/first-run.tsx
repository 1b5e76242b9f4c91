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

/** What the program is for, and three ways to begin. */
export function FirstRun({ onNewWork }: { onNewWork: () => void }) {
  const readOnly = useReadOnly();
  return (
    <div className="first-run">
      <p className="first-run-lead">
        Edition Ledger keeps the life of your books in one file: which ISBN belongs to which edition and
        format, where each is on sale, and what has to be done on which day. Once a book was sent out, what
        identifies it can no longer be changed by mistake, and every change stays on record.
      </p>
      <ol className="first-run-ways" aria-label="Ways to begin">
        <li>
          <h2>Record your ISBNs</h2>
          <p>Enter the prefix of a block you bought, or any one of its numbers; the rest follows from it.</p>
          <Link href="/numbers" className="button button-primary">
            Record a block
          </Link>
        </li>
        <li>
          <h2>Make your first work</h2>
          <p>A title is enough to begin. Formats, numbers and channels are added one after the other.</p>
          <Button onClick={onNewWork} disabled={readOnly !== undefined} reason={readOnly}>
            New work
          </Button>
        </li>
        <DemoWay />
      </ol>
      <p>
        Your books stand in a spreadsheet already? <Link href="/catalogue/import">Import it</Link>, or drop
        the file anywhere here.
      </p>
      <p className="soft">
        Name your publisher and imprint in <Link href="/settings">Settings</Link> first: new editions and
        removal requests take them from there.
      </p>
    </div>
  );
}
