import { useState } from 'react';
import type { CheckDetail, KeptLine, Pictured } from '../../../../src/contract/proof-checks/checks.ts';
import { usePictures } from './use-pictures.ts';
import { STATES } from './words.ts';

interface PagesProps {
  check: CheckDetail;
  chosen: KeptLine | undefined;
  onChoose: (line: KeptLine | undefined) => void;
}

const toneOf = (line: KeptLine) => STATES.find(({ state }) => state === line.state)?.tone ?? 'note';

/** The pages of which pictures are kept: one large, with boxes where its lines were seen, and all of them small. */
export function Pages({ check, chosen, onChoose }: PagesProps) {
  const [turned, turn] = useState<number>();
  const pictures = usePictures(
    check.id,
    check.pictured.map(({ page }) => page),
  );
  const wanted = chosen?.page ?? turned ?? check.lines.find((line) => line.page !== null)?.page;
  const shown = check.pictured.find(({ page }) => page === wanted) ?? check.pictured[0];
  if (!shown) return <p className="soft">No picture of a page is kept with this check.</p>;
  const boxes = (page: number) => check.lines.filter((line) => line.page === page && line.box !== null);
  return (
    <>
      <figure className="page-shown" tabIndex={-1}>
        <PagePicture
          of={shown}
          src={pictures.get(shown.page)}
          alt={`Page ${shown.page} of ${check.fileName}`}
          boxes={boxes(shown.page)}
          chosen={chosen}
        />
        <figcaption>
          Page {shown.page}
          {chosen?.page === shown.page && chosen.box ? `: ${chosen.label} is framed` : ''}
        </figcaption>
      </figure>
      {check.pictured.length < 2 ? null : (
        <ul className="page-strip" aria-label="Pages">
          {check.pictured.map((one) => (
            <li key={one.page}>
              <button
                type="button"
                className="page-small"
                aria-current={one.page === shown.page ? 'page' : undefined}
                onClick={() => {
                  onChoose(undefined);
                  turn(one.page);
                }}
              >
                <PagePicture
                  of={one}
                  src={pictures.get(one.page)}
                  alt=""
                  boxes={boxes(one.page)}
                  chosen={undefined}
                />
                <span>Page {one.page}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

interface PagePictureProps {
  of: Pictured;
  src: string | undefined;
  alt: string;
  boxes: readonly KeptLine[];
  chosen: KeptLine | undefined;
}

/** A picture of a page with a frame around each place that a line speaks of. */
function PagePicture({ of, src, alt, boxes, chosen }: PagePictureProps) {
  // Frames stand a little off what they frame.
  const off = Math.max(of.widthPt, of.heightPt) / 150;
  return (
    <span className="page-picture" style={{ aspectRatio: `${of.widthPx} / ${of.heightPx}` }}>
      {src === undefined ? null : <img src={src} width={of.widthPx} height={of.heightPx} alt={alt} />}
      <svg viewBox={`0 0 ${of.widthPt} ${of.heightPt}`} aria-hidden="true" focusable="false">
        {boxes.map((line) =>
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
