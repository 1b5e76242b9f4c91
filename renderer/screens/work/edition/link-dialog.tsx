import type { Edition } from '../../../../src/contract/editions.ts';
import type { Work } from '../../../../src/contract/works.ts';
import { useCommand } from '../../../api.ts';
import { Select } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';

/** Whether an edition comes after another in the line in which they replace each other. */
function follows(work: Work, id: number, other: number): boolean {
  const edition = work.editions.find((one) => one.id === id);
  if (!edition || edition.replacesId === null) return false;
  return edition.replacesId === other || follows(work, edition.replacesId, other);
}

/** Earlier editions of the work that this one could be linked to: replaced by none, and not after it. */
export function replaceable(edition: Edition, work: Work): Edition[] {
  if (edition.replacesId !== null) return [];
  return work.editions.filter(
    (one) =>
      one.id !== edition.id &&
      one.replacedById === null &&
      (one.number ?? 1) < (edition.number ?? 1) &&
      !follows(work, one.id, edition.id),
  );
}

/** Links an edition afterwards to the one it replaces. */
export function LinkDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const { work } = useWork();
  const choices = replaceable(edition, work);
  const form = useRecord({ replacesId: String(choices[0]?.id ?? '') });
  const link = useCommand('editions.link');
  const send = async () => {
    const input = { id: edition.id, replacesId: Number(form.draft.replacesId) };
    const answer = await link.run(input, 'The editions are linked.');
    if (answer.ok) closeAt(onClose, 'edition', edition.id);
  };
  return (
    <FormDialog
      title={`What ${fullName(edition)} replaces`}
      submit="Link the editions"
      width="narrow"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={link.pending}
      refusal={link.refusal}
      fields={['replacesId', 'id']}
      dirty={form.dirty}
    >
      <Select
        label="It replaces"
        value={form.draft.replacesId}
        onChange={(id) => form.set('replacesId', id)}
        choices={choices.map((one) => ({ value: String(one.id), label: fullName(one) }))}
        help="The older edition then says by what it is replaced, and its retirement waits for this one to sell."
        error={errorsOf(link.refusal)('replacesId')}
        name="replacesId"
      />
    </FormDialog>
  );
}
