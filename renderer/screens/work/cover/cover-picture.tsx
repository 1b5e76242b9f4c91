import type { OutputOf } from '../../../../src/contract/index.ts';
import { formatLength, type LengthUnit } from '../../../lib/length.ts';

interface CoverPictureProps {
  drawn: OutputOf<'covers.draw'> | undefined;
  unit: LengthUnit;
}

/** The template as it will be saved, its sizes in words, and the advice that goes with it. */
export function CoverPicture({ drawn, unit }: CoverPictureProps) {
  if (!drawn) return <p>No picture yet: choose a paper and give pages and trim.</p>;
  const { sheet } = drawn;
  const length = (um: number) => formatLength(um, unit);
  const spine = length(sheet.spineUm);
  const whole = `${length(sheet.widthUm)} × ${length(sheet.heightUm)}`;
  return (
    <figure className="cover">
      <img
        className="cover-sheet"
        src={`data:${drawn.mediaType};base64,${drawn.base64}`}
        alt={`Template of the ${sheet.kind}: whole sheet ${whole}, spine ${spine}`}
      />
      <figcaption className="stack">
        <p aria-live="polite">
          Spine <strong>{spine}</strong>; whole sheet <strong>{whole}</strong>, with{' '}
          {sheet.edge.kind === 'bleed' ? 'a bleed' : 'a turn-in'} of {length(sheet.edge.um)} all round.
        </p>
        {drawn.notes.length > 0 ? (
          <ul className="cover-notes" aria-label="Advice">
            {drawn.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        ) : null}
      </figcaption>
    </figure>
  );
}
