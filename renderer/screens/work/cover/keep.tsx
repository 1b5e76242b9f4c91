import type { GivenFigures } from '../../../../src/contract/covers.ts';
import { useCommand } from '../../../api.ts';
import { Button, Refused } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import type { CoverDraft } from './draft.ts';

/** Keeps a paper in the settings, so that the next book finds it in the list. */
export function KeepPaper({ draft }: { draft: CoverDraft }) {
  const { settings } = useWork();
  const update = useCommand('settings.update');
  const { pagesPerInch, paperName } = draft;
  const name = paperName.trim();
  const missing =
    pagesPerInch === undefined || name === '' ? 'Name the paper and its thickness first.' : undefined;
  const keep = () => {
    if (pagesPerInch === undefined) return;
    const papers = settings.papers.filter((paper) => paper.name !== name);
    const kept = { name, bulk: { pagesPerInch }, source: 'your own' };
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
