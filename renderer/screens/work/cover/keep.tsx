import type { GivenFigures } from '../../../../src/contract/covers.ts';
import { useCommand } from '../../../api.ts';
import { Button, Refused } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { type CoverDraft, otherBulk } from './draft.ts';

/** Keeps a paper in the settings, so that the next book finds it in the list. */
export function KeepPaper({ draft }: { draft: CoverDraft }) {
  const { settings } = useWork();
  const update = useCommand('settings.update');
  const bulk = otherBulk(draft);
  const name = draft.paperName.trim();
  const missing = bulk === undefined || name === '' ? 'Name the paper and its thickness first.' : undefined;
  const keep = () => {
    if (bulk === undefined) return;
    const papers = settings.papers.filter((paper) => paper.name !== name);
    const kept = { name, bulk, source: 'your own' };
    void update.run({ papers: [...papers, kept] }, `${name} is kept among your papers.`);
  };
  return (
    <div>
      <Button disabled={missing !== undefined} reason={missing} pending={update.pending} onClick={keep}>
        Keep this paper
      </Button>
      <Refused refusal={update.refusal} />
    </div>
  );
}

/** Gives up the figures that were kept, so that the usual ones hold again. */
export function UsualFigures({ onDone }: { onDone: () => void }) {
  const { settings } = useWork();
  const update = useCommand('settings.update');
  if (Object.keys(settings.printerFigures).length === 0) return null;
  return (
    <div>
      <Button
        pending={update.pending}
        onClick={() =>
          void update
            .run({ printerFigures: {} }, 'The usual figures hold again.')
            .then((answer) => answer.ok && onDone())
        }
      >
        Take the usual figures again
      </Button>
      <Refused refusal={update.refusal} />
    </div>
  );
}

/** Keeps the figures typed here as the usual ones of the user's printer. */
export function KeepFigures({ figures }: { figures: GivenFigures }) {
  const { settings } = useWork();
  const update = useCommand('settings.update');
  const changed = Object.values(figures).some((um) => um !== undefined);
  const keep = () =>
    void update.run(
      { printerFigures: { ...settings.printerFigures, ...figures } },
      'Kept: these figures are the usual ones from now on.',
    );
  return (
    <div>
      <Button
        disabled={!changed}
        reason={changed ? undefined : 'Change a figure first.'}
        pending={update.pending}
        onClick={keep}
      >
        Keep as my printer’s figures
      </Button>
      <Refused refusal={update.refusal} />
    </div>
  );
}
