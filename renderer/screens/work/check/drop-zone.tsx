import type { OutputOf } from '../../../../src/contract/index.ts';
import { fileKindName } from '../../../../src/contract/terms.ts';
import { FileInput, Notice } from '../../../ui/index.ts';
import { JobProgress } from '../../../ui/job-progress.tsx';
import { useCheckFile } from './use-check-file.ts';
import { ACCEPTS, HINTS, KIND_TITLES } from './words.ts';

/** Larger files cannot lie ready for the catalogue. */
const MOST_BYTES = 1_000_000_000;

export type CheckKind = OutputOf<'proofChecks.list'>['kinds'][number];

export interface DropZoneProps {
  formatId: number;
  of: CheckKind;
  /** What counts for this kind of file now, in words. */
  standing: string;
  editable: boolean;
  onChecked: (checkId: number) => void;
}

/** Where a final file of a kind is dropped or chosen, with how far its reading is. */
export function DropZone({ formatId, of, standing, editable, onChecked }: DropZoneProps) {
  const { kind, final } = of;
  const { job, fileName, refusal, check } = useCheckFile(formatId, kind);
  const take = async (file: File) => {
    const id = await check(file);
    if (id !== undefined) onChecked(id);
  };
  return (
    <section className="check-drop" aria-label={KIND_TITLES[kind]}>
      <h3>{KIND_TITLES[kind]}</h3>
      <p className="soft">
        {final
          ? `Final file on record: ${final.fileName}, since ${final.finalOn}.`
          : 'No final file is on record.'}{' '}
        {standing}
      </p>
      {editable ? (
        <FileInput
          label={`Check the ${fileKindName(kind)}`}
          accept={ACCEPTS[kind]}
          help={HINTS[kind]}
          maxBytes={MOST_BYTES}
          disabled={job.running}
          onFile={(file) => void take(file)}
          name={`file-${kind}`}
        />
      ) : null}
      <JobProgress job={job} what={`Checking ${fileName ?? 'the file'}`} />
      {refusal && refusal.code !== 'CANCELLED' ? (
        <Notice tone="stop" title={`${fileName ?? 'The file'} was not checked.`}>
          {refusal.message}
        </Notice>
      ) : null}
      {refusal?.code === 'CANCELLED' ? <p className="soft">{refusal.message}</p> : null}
    </section>
  );
}
