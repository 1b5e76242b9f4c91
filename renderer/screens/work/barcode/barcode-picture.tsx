import type { OutputOf } from '../../../../src/contract/index.ts';
import { dragAsFile } from '../../../lib/drag-out.ts';
import { sizeInWords } from './draft.ts';

/** The preview is enlarged so far, to be judged on a screen. */
const ENLARGED = 2;

interface BarcodePictureProps {
  drawn: OutputOf<'barcodes.draw'> | undefined;
  hyphenated: string;
}

/** The bar code as it will be saved, its true size in words, and the advice that goes with it. */
export function BarcodePicture({ drawn, hyphenated }: BarcodePictureProps) {
  return (
    <figure className="barcode">
      <div className="barcode-sheet">
        {drawn ? (
          <img
            src={`data:${drawn.mediaType};base64,${drawn.base64}`}
            alt={`Bar code of ISBN ${hyphenated}`}
            style={{ width: `${drawn.widthMm * ENLARGED}mm` }}
            onDragStart={(event) => dragAsFile(event, drawn)}
          />
        ) : (
          <p>No picture as it stands.</p>
        )}
      </div>
      <figcaption className="stack">
        <p aria-live="polite">
          {drawn ? (
            <>
              Printed, it is <strong>{sizeInWords(drawn.widthMm, drawn.heightMm)}</strong>, the quiet space
              around it included. Here it is shown larger.
            </>
          ) : null}
        </p>
        {drawn && drawn.notes.length > 0 ? (
          <ul className="barcode-notes" aria-label="Advice">
            {drawn.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        ) : null}
      </figcaption>
    </figure>
  );
}
