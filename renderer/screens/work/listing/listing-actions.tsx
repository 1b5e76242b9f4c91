import { type ReactNode, useState } from 'react';
import type { ListingStanding } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { Button, ConfirmDialog } from '../../../ui/index.ts';
import { closeAt } from '../parts/go-to.ts';
import { ProofDialog } from '../proof/proof-dialog.tsx';
import type { ListingItemProps } from './listing-props.ts';
import { MoveDialog } from './move-dialog.tsx';
import { reachable, STEP_VERBS } from './reach.ts';
import { RequestDialog } from './request-dialog.tsx';
import { SheetLink } from './sheet-link.tsx';
import { TermsDialog } from './terms-dialog.tsx';

type Doing = { move: ListingStanding | undefined } | 'terms' | 'proof' | 'ask' | 'remove';

const PROOFED: readonly string[] = ['sent', 'proof', 'cleared'];

const NO_NUMBER = 'Take a number for this format first.';

/** The next steps of a listing, each with what it means. */
function NextSteps({
  format,
  listing,
  onMove,
}: ListingItemProps & { onMove: (to: ListingStanding | undefined) => void }) {
  if (listing.next.length === 0) return null;
  const blocked = format.isbn13 === null;
  return (
    <ul className="next-steps">
      {listing.next.map((step) => (
        <li key={step.to}>
          <Button
            label={`${STEP_VERBS[step.to]}: ${format.name} on ${listing.channelName}`}
            disabled={blocked}
            reason={NO_NUMBER}
            onClick={() => onMove(step.to)}
          >
            {STEP_VERBS[step.to]}
          </Button>
          <span className="soft">{blocked ? NO_NUMBER : step.label}</span>
        </li>
      ))}
    </ul>
  );
}

/** What can be done with a listing where it stands. */
export function ListingActions({ history, ...props }: ListingItemProps & { history: ReactNode }) {
  const { format, listing } = props;
  const [doing, setDoing] = useState<Doing>();
  const close = () => setDoing(undefined);
  const act = (what: Doing, text: string) => (
    <Button
      kind="quiet"
      label={`${text}: ${format.name} on ${listing.channelName}`}
      onClick={() => setDoing(what)}
    >
      {text}
    </Button>
  );
  const askable = listing.standing === 'selling' || listing.standing === 'leaving';
  const several = format.isbn13 !== null && reachable(listing).length > listing.next.length;
  return (
    <>
      <NextSteps {...props} onMove={(move) => setDoing({ move })} />
      <div className="row listing-actions">
        <SheetLink {...props} />
        {PROOFED.includes(listing.standing) ? act('proof', 'Record a proof') : null}
        {several ? act({ move: undefined }, 'Move') : null}
        {listing.standing === 'gone' ? null : act('terms', 'Edit terms')}
        {askable ? act('ask', 'Ask for removal') : null}
        {listing.firstSentOn === null ? act('remove', 'Remove') : null}
        {history}
      </div>
      {typeof doing === 'object' ? <MoveDialog {...props} to={doing.move} onClose={close} /> : null}
      {doing === 'proof' ? <ProofDialog {...props} onClose={close} /> : null}
      {doing === 'terms' ? <TermsDialog format={format} listing={listing} onClose={close} /> : null}
      {doing === 'ask' ? (
        <RequestDialog
          format={format}
          listing={listing}
          onClose={close}
          onAsked={listing.standing === 'selling' ? () => setDoing({ move: 'leaving' }) : undefined}
        />
      ) : null}
      {doing === 'remove' ? <RemoveListing {...props} onClose={close} /> : null}
    </>
  );
}

function RemoveListing({ format, listing, onClose }: ListingItemProps & { onClose: () => void }) {
  const remove = useCommand('listings.remove');
  const send = async () => {
    const said = `${format.name} is no longer listed on ${listing.channelName}.`;
    const answer = await remove.run({ id: listing.id }, said);
    if (answer.ok) closeAt(onClose, 'format', format.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Remove the listing on ${listing.channelName}?`}
      confirm="Remove the listing"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() => void send()}
    >
      {format.name} was never sent there, so nothing but the journal will tell of it.
    </ConfirmDialog>
  );
}
