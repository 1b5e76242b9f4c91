import { useState } from 'react';
import type { Desk } from '../../../../src/contract/retirement.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { Button, Standing } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { useWork } from '../parts/work-context.tsx';
import { DeskInputs, useDeskDraft } from './desk-inputs.tsx';

type Item = Desk['checklist'][number];

/** Links, website, reviews, returns and the agency: what is done once for the edition. */
export function Checklist({ desk }: { desk: Desk }) {
  const { editable } = useWork();
  const [doing, setDoing] = useState<Item>();
  if (desk.checklist.length === 0)
    return <p className="soft">The checklist is made with the plan of the retirement.</p>;
  return (
    <>
      <ul className="plans" aria-label="Once for the edition">
        {desk.checklist.map((item) => (
          <li key={item.id}>
            <span>
              {item.title}
              {item.note === '' ? null : <span className="glance-edition">{item.note}</span>}
            </span>
            <span className="row">
              <Standing
                of="task"
                value={item.standing}
                detail={item.endedOn === null ? `due ${formatDay(item.dueOn)}` : formatDay(item.endedOn)}
              />
              {editable && item.endedOn === null ? (
                <Button
                  label={`Done: ${item.title}`}
                  disabled={item.needs > 0}
                  reason={`${item.needs} tasks come first.`}
                  onClick={() => setDoing(item)}
                >
                  Done
                </Button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {doing ? <DoneDialog item={doing} onClose={() => setDoing(undefined)} /> : null}
    </>
  );
}

function DoneDialog({ item, onClose }: { item: Item; onClose: () => void }) {
  const form = useDeskDraft();
  const finish = useCommand('tasks.finish');
  const { on, note } = form.draft;
  const send = async () => {
    const answer = await finish.run({ id: item.id, note, ...(on === '' ? {} : { on }) }, 'It is done.');
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={item.title}
      submit="Mark done"
      width="narrow"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={finish.pending}
      refusal={finish.refusal}
      fields={['on', 'note']}
      dirty={form.dirty}
    >
      <DeskInputs form={form} errorOf={errorsOf(finish.refusal)} />
    </FormDialog>
  );
}
