import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { Work } from '../../../../src/contract/works.ts';
import { useCommand } from '../../../api.ts';
import { Button, ConfirmDialog } from '../../../ui/index.ts';
import { AdviceDialog } from '../advice/advice-dialog.tsx';
import { AddFormatDialog } from '../format/format-dialogs.tsx';
import { fullName } from '../parts/edition-names.ts';
import { closeAt } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';
import { CopyrightDialog } from '../ready/copyright-dialog.tsx';
import { EditionDialog } from './edition-dialog.tsx';
import { LinkDialog, replaceable } from './link-dialog.tsx';
import { NextEditionDialog } from './next-edition-dialog.tsx';
import { ReleaseDialog, RetirementDialog } from './plan-dialogs.tsx';

type Doing =
  | 'edit'
  | 'add-format'
  | 'advice'
  | 'is-new'
  | 'copyright'
  | 'next'
  | 'link'
  | 'release'
  | 'retire'
  | 'remove';

const TEXTS: Record<Doing, string> = {
  edit: 'Edit edition',
  'add-format': 'Add a format',
  advice: 'New edition or reprint?',
  'is-new': 'Is it a new edition?',
  copyright: 'Copyright page',
  next: 'Prepare the next edition',
  link: 'Link to the edition it replaces',
  release: 'Plan the release',
  retire: 'Plan the retirement',
  remove: 'Remove edition',
};

const WAS_ON_SALE: readonly string[] = ['live', 'retiring', 'retired'];
const BEFORE_SALE: readonly string[] = ['unsent', 'sent', 'proof', 'cleared'];

/** What makes sense for an edition where it stands. */
function actionsOf(edition: Edition, work: Work): Doing[] {
  const alone = work.editions.length === 1;
  const planned = new Set(edition.plans.filter((plan) => !plan.ended).map((plan) => plan.kind));
  const listings = edition.formats
    .filter((format) => format.standing !== 'cancelled')
    .flatMap((format) => format.listings);
  const onSale = edition.formats.some((format) => WAS_ON_SALE.includes(format.standing));
  const actions: [Doing, boolean][] = [
    ['edit', true],
    ['add-format', true],
    ['release', !planned.has('release') && listings.some((one) => BEFORE_SALE.includes(one.standing))],
    ['advice', onSale],
    ['is-new', !onSale && edition.replacesId !== null],
    ['next', onSale && edition.replacedById === null],
    ['copyright', edition.formats.some((format) => format.standing !== 'cancelled')],
    ['link', replaceable(edition, work).length > 0],
    ['retire', !planned.has('retirement') && listings.some((one) => one.standing === 'selling')],
    ['remove', edition.formats.length === 0 && !alone],
  ];
  return actions.filter(([, fits]) => fits).map(([doing]) => doing);
}

/** The buttons of an edition and the dialogs they open. */
export function EditionActions({ edition }: { edition: Edition }) {
  const { work } = useWork();
  const [doing, setDoing] = useState<Doing>();
  const close = () => setDoing(undefined);
  return (
    <div className="row edition-actions">
      {actionsOf(edition, work).map((what) => (
        <Button key={what} label={`${TEXTS[what]}: ${fullName(edition)}`} onClick={() => setDoing(what)}>
          {TEXTS[what]}
        </Button>
      ))}
      {doing === 'edit' ? <EditionDialog edition={edition} onClose={close} /> : null}
      {doing === 'add-format' ? <AddFormatDialog edition={edition} onClose={close} /> : null}
      {doing === 'advice' || doing === 'is-new' ? <AdviceDialog edition={edition} onClose={close} /> : null}
      {doing === 'copyright' ? <CopyrightDialog edition={edition} onClose={close} /> : null}
      {doing === 'next' ? <NextEditionDialog edition={edition} onClose={close} /> : null}
      {doing === 'link' ? <LinkDialog edition={edition} onClose={close} /> : null}
      {doing === 'release' ? <ReleaseDialog edition={edition} onClose={close} /> : null}
      {doing === 'retire' ? <RetirementDialog edition={edition} onClose={close} /> : null}
      {doing === 'remove' ? <RemoveEdition edition={edition} onClose={close} /> : null}
    </div>
  );
}

function RemoveEdition({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const { work } = useWork();
  const remove = useCommand('editions.remove');
  const other = work.editions.find((one) => one.id !== edition.id);
  const send = async () => {
    const answer = await remove.run({ id: edition.id }, `${fullName(edition)} is removed.`);
    if (answer.ok && other) closeAt(onClose, 'edition', other.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Remove ${fullName(edition)}?`}
      confirm="Remove the edition"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() => void send()}
    >
      It has no format, so no number and no listing is touched.
    </ConfirmDialog>
  );
}
