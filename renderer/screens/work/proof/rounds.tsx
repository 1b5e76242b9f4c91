import type { ProofRound } from '../../../../src/contract/proofs.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import { useAsOf } from '../../../location.ts';
import { Section } from '../../../ui/index.ts';
import { OUTCOME_WORDS } from './words.ts';

/** The proof rounds of one listing with what each cost; nothing where there was none. */
function useRounds(editionId: number, listingId: number) {
  const { asOf } = useAsOf();
  const day = asOf === undefined ? {} : { asOf };
  const rounds = useQueryOf('proofs.list', { editionId, ...day }).data?.rounds ?? [];
  const costs = useQueryOf('costs.ofEdition', { editionId, ...day }).data?.costs ?? [];
  return rounds
    .filter((round) => round.listingId === listingId)
    .map((round) => ({ round, costs: costs.filter((cost) => cost.roundId === round.id) }));
}

type Costs = ReturnType<typeof useRounds>[number]['costs'];

function costText(costs: Costs): string {
  return costs
    .map(({ kind, amount, voucher }) =>
      voucher === ''
        ? `${kind} ${formatMoney(amount.amountMinor, amount.currency)}`
        : `${kind} with voucher ${voucher}`,
    )
    .join(', ');
}

function Round({ round, costs }: { round: ProofRound; costs: Costs }) {
  const rest = [round.note, costText(costs)].filter((part) => part !== '').join(' · ');
  return (
    <li>
      <time dateTime={round.on}>{formatDay(round.on)}</time> {round.proof} proof:{' '}
      {OUTCOME_WORDS[round.outcome].label}
      {rest === '' ? null : <span className="soft"> · {rest}</span>}
    </li>
  );
}

/** The proof rounds of a listing, the oldest first. */
export function Rounds(props: { editionId: number; listingId: number; titled?: boolean }) {
  const rounds = useRounds(props.editionId, props.listingId);
  if (rounds.length === 0) return null;
  const list = (
    <ol className="plain-list step-history" aria-label="Proof rounds">
      {rounds.map(({ round, costs }) => (
        <Round key={round.id} round={round} costs={costs} />
      ))}
    </ol>
  );
  return props.titled ? <Section title="Proof rounds">{list}</Section> : list;
}
