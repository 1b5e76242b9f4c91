import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { Button, Dialog, Refused } from '../../../ui/index.ts';
import { useGuardedClose } from '../../../ui/use-guarded-close.tsx';
import { HelpFold } from '../../help/help-link.tsx';
import { NextEditionDialog } from '../edition/next-edition-dialog.tsx';
import { AddFormatDialog } from '../format/format-dialogs.tsx';
import { editionOf, fullName, shortName } from '../parts/edition-names.ts';
import { closeAt } from '../parts/go-to.ts';
import { useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import './advice.css';
import { AdviceAnswer, AdviceHeadline } from './advice-answer.tsx';
import { ChangeForm } from './change-form.tsx';
import { type Advice, FIRST_DRAFT, statedOf } from './draft.ts';

type Onward = 'next' | 'add-format';

interface WaysProps {
  edition: Edition;
  advice: Advice;
  pending: boolean;
  onKeep: () => void;
  onGo: (where: Onward) => void;
}

/** Where the answer leads: the next edition, a further format, or keeping the numbers. */
function Ways({ edition, advice, pending, onKeep, onGo }: WaysProps) {
  const { mode, formats, overall, needsEdition } = advice;
  if (mode === 'draft')
    return (
      <Button kind="primary" pending={pending} onClick={onKeep}>
        Keep this answer with the edition
      </Button>
    );
  const further = formats.some((format) => format.verdict === 'new') && !needsEdition;
  const keeps = formats.some((format) => format.verdict !== 'new' && format.formatId !== null);
  return (
    <>
      {needsEdition && edition.replacedById === null ? (
        <Button kind="primary" onClick={() => onGo('next')}>
          Prepare the next edition
        </Button>
      ) : null}
      {further ? (
        <Button kind="primary" onClick={() => onGo('add-format')}>
          Add a format with a number of its own
        </Button>
      ) : null}
      {keeps ? (
        <Button kind={overall === 'same' ? 'primary' : 'plain'} pending={pending} onClick={onKeep}>
          This is a reprint or correction: keep the numbers
        </Button>
      ) : null}
    </>
  );
}

/** Answers whether what is thought of makes a new edition or a reprint, format by format. */
export function AdviceDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const { work } = useWork();
  const form = useRecord(FIRST_DRAFT);
  const rules = useQueryOf('editions.adviceRules', {}).data?.rules ?? [];
  const stated = statedOf(edition, form.draft, rules);
  const advice = useQueryOf(
    'editions.advise',
    { editionId: edition.id, stated: { ...stated, note: '' } },
    { keep: true },
  );
  const note = useCommand('editions.noteAdvice');
  const { close, question } = useGuardedClose(form.dirty, onClose);
  const [onward, setOnward] = useState<Onward>();
  const keep = async () => {
    const answer = await note.run({ editionId: edition.id, stated }, 'The answer is kept with the edition.');
    if (answer.ok) closeAt(onClose, 'edition', edition.id);
  };
  if (onward === 'next')
    return <NextEditionDialog edition={edition} stated={stated} added={form.draft.added} onClose={onClose} />;
  if (onward === 'add-format') return <AddFormatDialog edition={edition} onClose={onClose} />;
  const { data } = advice;
  const old = editionOf(work, edition.replacesId);
  const unsaid = data === undefined || data.asked !== null;
  return (
    <>
      <Dialog
        open
        onClose={close}
        width="wide"
        title={
          data?.mode === 'draft'
            ? `Is ${fullName(edition)} a new edition?`
            : `New edition or reprint: ${fullName(edition)}`
        }
        footer={
          <>
            {unsaid ? null : (
              <Ways
                edition={edition}
                advice={data}
                pending={note.pending}
                onKeep={() => void keep()}
                onGo={setOnward}
              />
            )}
            <Button onClick={close}>Close</Button>
          </>
        }
      >
        {data ? <AdviceHeadline advice={data} /> : null}
        <div className="advice">
          {data ? (
            <div className="stack">
              <p className="soft">
                {data.mode === 'draft'
                  ? `Compared with the ${old ? shortName(old) : data.against}, which it replaces. Say what the records cannot tell.`
                  : 'Say what will change; nothing is written until you decide.'}
              </p>
              <ChangeForm edition={edition} form={form} rules={rules} mode={data.mode} />
            </div>
          ) : null}
          {data ? <AdviceAnswer advice={data} /> : null}
        </div>
        <HelpFold topic="editions" />
        <Refused refusal={advice.error ?? note.refusal} />
      </Dialog>
      {question}
    </>
  );
}
