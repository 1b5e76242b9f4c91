import type { KeptLine, Pictured } from '../../../../src/contract/proof-checks/checks.ts';
import { STATES } from './words.ts';

const toneOf = (line: KeptLine) => STATES.find(({ state }) => state === line.state)?.tone ?? 'note';

export interface PagePictureProps {
  of: Pictured;
  src: string | undefined;
  alt: string;
  boxes: readonly KeptLine[];
  chosen: KeptLine | undefined;
}

/** A picture of a page with a frame around each place that a line speaks of. */
export function PagePicture({ of, src, alt, boxes, chosen }: PagePictureProps) {
  // Frames stand a little off what they frame.
  const off = Math.max(of.widthPt, of.heightPt) / 150;
  // The chosen one is drawn over the others.
  const ordered = boxes.toSorted((a, b) => Number(a.id === chosen?.id) - Number(b.id === chosen?.id));
  return (
    <span className="page-picture" style={{ aspectRatio: `${of.widthPx} / ${of.heightPx}` }}>
      {src === undefined ? null : <img src={src} width={of.widthPx} height={of.heightPx} alt={alt} />}
      <svg viewBox={`0 0 ${of.widthPt} ${of.heightPt}`} aria-hidden="true" focusable="false">
        {ordered.map((line) =>
          line.box === null ? null : (
            <rect
              key={line.id}
              className={`page-box page-box-${toneOf(line)}${line.id === chosen?.id ? ' page-box-chosen' : ''}`}
              x={line.box.xPt - off}
              y={line.box.yPt - off}
              width={line.box.widthPt + 2 * off}
              height={line.box.heightPt + 2 * off}
            />
          ),
        )}
      </svg>
    </span>
  );
}
