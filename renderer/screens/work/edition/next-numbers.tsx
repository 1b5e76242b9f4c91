import { Link } from 'wouter';
import { useQueryOf } from '../../../api.ts';
import { Checkbox, Notice, Select } from '../../../ui/index.ts';
import { counted } from '../parts/names.ts';
import type { RecordForm } from '../parts/use-record.ts';
import { formatCount, type NextDraft } from './next-edition-draft.ts';

const ANY_BLOCK = 'any';

/** Whether each format takes its number at once, from which block, and whether there are enough. */
export function NextNumbers({ form, error }: { form: RecordForm<NextDraft>; error: string | undefined }) {
  const { takeNumbers, blockId } = form.draft;
  const blocks = useQueryOf('blocks.list', {}).data?.blocks ?? [];
  const chosen = blocks.filter((block) => blockId === undefined || block.id === blockId);
  const free = chosen.reduce((sum, block) => sum + block.counts.free, 0);
  const wanted = formatCount(form.draft);
  return (
    <>
      <Checkbox
        label={`Take the numbers now: ${counted(wanted, 'number')}${wanted === 1 ? '' : ', each'} for ever`}
        checked={takeNumbers}
        onChange={(on) => form.set('takeNumbers', on)}
        help={`${counted(free, 'number')} free. Without this, each format takes its number later.`}
        error={takeNumbers ? undefined : error}
        name="takeNumbers"
      />
      {takeNumbers && blocks.length > 1 ? (
        <Select
          label="Block"
          value={blockId === undefined ? ANY_BLOCK : String(blockId)}
          onChange={(value) => form.set('blockId', value === ANY_BLOCK ? undefined : Number(value))}
          choices={[
            { value: ANY_BLOCK, label: 'the oldest block that has a free number' },
            ...blocks.map((block) => ({
              value: String(block.id),
              label: `${block.label || block.hyphenatedPrefix}: ${block.counts.free.toLocaleString()} free`,
            })),
          ]}
          error={error}
        />
      ) : null}
      {takeNumbers && free < wanted ? (
        <Notice tone="care" title="There are not enough free numbers.">
          Record a further block on the <Link href="/numbers">Numbers screen</Link>, or take the numbers
          later.
        </Notice>
      ) : null}
    </>
  );
}
